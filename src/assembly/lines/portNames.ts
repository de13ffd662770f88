import type { Port } from '../../shoot/schema/electrics.ts';

/** What people call each port: its own name; else connector and way where that tells it apart; else its key in words. */
export function portNames(ports: Readonly<Record<string, Port>>): Record<string, string> {
  const counts = new Map<string, number>();
  for (const port of Object.values(ports)) counts.set(generic(port), (counts.get(generic(port)) ?? 0) + 1);
  return Object.fromEntries(Object.entries(ports).map(([id, port]) => [id, port.name ?? (counts.get(generic(port)) === 1 ? generic(port) : inWords(id))]));
}

const WAYS = { in: 'input', out: 'output', both: 'socket' } as const;
const KINDS = { video: 'picture', power: 'power', control: 'control' } as const;

function generic({ kind, way, video }: Port): string {
  return `${kind === 'video' && video !== undefined ? video.signal : KINDS[kind]} ${WAYS[way]}`;
}

/** Keys such as `sdi-1` and `tap-2` are what is printed beside the socket; only the hyphens go. */
const inWords = (id: string): string => id.replaceAll('-', ' ');
