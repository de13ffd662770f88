import type { Canvas } from './canvases.ts';
import type { FdlRect } from './fdlRound.ts';

/** Frames as an ASC Framing Decision List, version 2.0: an open standard that cameras, colour and editing read. */
export function writeFdl({ label, context, canvases }: { label: string; context: string; canvases: readonly Canvas[] }): string {
  const [first] = canvases;
  const aspect = first?.aspect ?? { width: 16, height: 9 };
  const protection = first?.protection ?? 0;
  const intent = `${aspect.width}_${aspect.height}`.slice(0, 32);
  const body = {
    version: { major: 2, minor: 0 },
    fdl_creator: 'Setworthy',
    default_framing_intent: intent,
    framing_intents: [{ label: `${(aspect.width / aspect.height).toFixed(2)}:1`, id: intent, aspect_ratio: aspect, protection }],
    contexts: [{ label: `${label}, ${context}`, context_creator: 'Setworthy', canvases: canvases.map((canvas, at) => canvasOf(canvas, `canvas_${at + 1}`, intent)) }],
  };
  return `${JSON.stringify({ uuid: uuidOf(JSON.stringify(body)), ...body }, null, 2)}\n`;
}

function canvasOf(canvas: Canvas, id: string, intent: string) {
  const { widthPx, heightPx, sensorWidthMm, sensorHeightMm, squeeze, frame, modeName, protection } = canvas;
  return {
    label: `${modeName}, ${squeeze}×`, id, source_canvas_id: id, dimensions: { width: widthPx, height: heightPx },
    physical_dimensions: { width: sensorWidthMm, height: sensorHeightMm }, anamorphic_squeeze: squeeze,
    framing_decisions: [{
      id: `${id}-${intent}`, framing_intent_id: intent, dimensions: size(frame), anchor_point: corner(frame),
      ...(protection === 0 ? {} : { protection_dimensions: size(canvas.protected), protection_anchor_point: corner(canvas.protected) }),
    }],
  };
}

const size = ({ widthPx, heightPx }: FdlRect) => ({ width: widthPx, height: heightPx });
const corner = ({ xPx, yPx }: FdlRect) => ({ x: xPx, y: yPx });

/** A UUID of version 8 (RFC 9562) from the content, so that the same frames carry the same one. Hash: FNV-1a, four times seeded. */
function uuidOf(text: string): string {
  const words = [0x81_1C_9D_C5, 0x01_00_01_93, 0xDE_AD_BE_EF, 0x12_34_56_78].map((seed) => {
    let hash = seed >>> 0;
    for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01_00_01_93) >>> 0;
    return hash.toString(16).padStart(8, '0');
  });
  const hex = [...words.join('')];
  hex[12] = '8';
  hex[16] = '89ab'[Number.parseInt(hex[16] ?? '0', 16) % 4] ?? '8';
  const whole = hex.join('');
  return [whole.slice(0, 8), whole.slice(8, 12), whole.slice(12, 16), whole.slice(16, 20), whole.slice(20)].join('-');
}
