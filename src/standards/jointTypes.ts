/**
 * How the joints of a rig hold. z is out of the joint, along its screw, rod or lens axis; x and y lie across it. A way is held
 * by shape, or by friction until it slips, and may have play. Stiffness is an estimate from common practice with wide bounds:
 * nothing is published; a weight on an arm and a reading of the shift make it a measurement.
 */
export type Way = 'xNPerMm' | 'yNPerMm' | 'zNPerMm' | 'xNmPerRad' | 'yNmPerRad' | 'zNmPerRad';
export type HeldBy = 'shape' | 'friction' | 'play';

export interface JointType {
  readonly name: string;
  readonly says: string;
  readonly heldBy: Readonly<Record<Way, HeldBy>>;
  /** Across, along, nodding (about x and y) and turning (about z). */
  readonly stiffness: Readonly<Record<Way, number>>;
  /** Between a third and three times as stiff, unless stated otherwise. */
  readonly within: { readonly low: number; readonly high: number };
  readonly source: string;
}

/** Shares of the stiffness between which it lies. */
const WIDE = { low: 1 / 3, high: 3 };
const SOURCE = 'estimate, common practice; measure it (bench measurement “stiffness”)';

interface Short {
  readonly across: number;
  readonly along: number;
  readonly nodding: number;
  readonly turning: number;
}
const ways = ({ across, along, nodding, turning }: Short) => ({
  xNPerMm: across, yNPerMm: across, zNPerMm: along, xNmPerRad: nodding, yNmPerRad: nodding, zNmPerRad: turning,
});
const held = (across: HeldBy, along: HeldBy, nodding: HeldBy, turning: HeldBy) =>
  ({ xNPerMm: across, yNPerMm: across, zNPerMm: along, xNmPerRad: nodding, yNmPerRad: nodding, zNmPerRad: turning });

export const JOINT_TYPES: readonly JointType[] = [
  {
    name: 'one screw', says: 'one screw between flat faces: it turns where the moment about the screw beats friction',
    heldBy: held('friction', 'shape', 'shape', 'friction'), stiffness: ways({ across: 8000, along: 15_000, nodding: 900, turning: 900 }),
    within: WIDE, source: SOURCE,
  },
  {
    name: 'screw with pins', says: 'one screw with locating pins: shape keeps it from turning', heldBy: held('shape', 'shape', 'shape', 'shape'),
    stiffness: ways({ across: 10_000, along: 15_000, nodding: 1200, turning: 1500 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'two screws', says: 'two screws: the second keeps it from turning', heldBy: held('friction', 'shape', 'shape', 'shape'),
    stiffness: ways({ across: 15_000, along: 30_000, nodding: 2500, turning: 3000 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'clamp on one rod', says: 'a clamp on one rod: turns about the rod and slides along it where friction ends',
    heldBy: held('shape', 'friction', 'shape', 'friction'), stiffness: ways({ across: 8000, along: 5000, nodding: 700, turning: 400 }), within: WIDE,
    source: SOURCE,
  },
  {
    name: 'clamp on two rods', says: 'a clamp on two rods: their distance keeps it from turning', heldBy: held('shape', 'friction', 'shape', 'shape'),
    stiffness: ways({ across: 12_000, along: 8000, nodding: 1500, turning: 3000 }), within: WIDE, source: SOURCE,
  },
  // Faces a hand's breadth across: a camera of 18 kg tilted all the way (26 N·m) is seen to nod by some tenths of a degree on it, not by one.
  {
    name: 'wedge', says: 'a dovetail or wedge in a jaw: held by shape across, by friction along', heldBy: held('shape', 'friction', 'shape', 'shape'),
    stiffness: ways({ across: 20_000, along: 10_000, nodding: 5000, turning: 5000 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'quick release', says: 'a sprung catch: shape with some play', heldBy: held('play', 'play', 'play', 'play'),
    stiffness: ways({ across: 3000, along: 3000, nodding: 250, turning: 250 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'lens mount', says: 'a lens in its mount: breech or clamp by shape, bayonet by springs with some play',
    heldBy: held('shape', 'shape', 'shape', 'shape'), stiffness: ways({ across: 10_000, along: 15_000, nodding: 3000, turning: 2500 }), within: WIDE,
    source: SOURCE,
  },
  {
    name: 'sprung bayonet', says: 'a stills bayonet: springs hold the flange, the pin has play in turning',
    heldBy: held('play', 'shape', 'shape', 'play'), stiffness: ways({ across: 3000, along: 4000, nodding: 600, turning: 600 }), within: WIDE,
    source: SOURCE,
  },
  {
    name: 'collar', says: 'a ring round a barrel: held by shape across, by friction along and in turning',
    heldBy: held('shape', 'friction', 'shape', 'friction'), stiffness: ways({ across: 8000, along: 3000, nodding: 800, turning: 800 }), within: WIDE,
    source: SOURCE,
  },
  {
    name: 'lens support', says: 'a roller or yoke under a lens: it only pushes, up; taken as bonded upwards',
    heldBy: { xNPerMm: 'friction', yNPerMm: 'shape', zNPerMm: 'friction', xNmPerRad: 'play', yNmPerRad: 'play', zNmPerRad: 'play' },
    stiffness: { xNPerMm: 500, yNPerMm: 4000, zNPerMm: 200, xNmPerRad: 0, yNmPerRad: 0, zNmPerRad: 0 }, within: WIDE, source: SOURCE,
  },
  {
    name: 'shoe', says: 'an accessory shoe with a nut or a spring: it nods', heldBy: held('friction', 'shape', 'play', 'friction'),
    stiffness: ways({ across: 1500, along: 3000, nodding: 60, turning: 60 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'friction arm', says: 'a ball or a locked elbow: every turn is held by friction', heldBy: held('shape', 'shape', 'friction', 'friction'),
    stiffness: ways({ across: 2000, along: 3000, nodding: 120, turning: 120 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'rosette', says: 'toothed faces: shape in steps', heldBy: held('shape', 'shape', 'shape', 'shape'),
    stiffness: ways({ across: 8000, along: 12_000, nodding: 700, turning: 1500 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'press fit or screws all round', says: 'a block in its seat, a front screwed on: as good as one piece',
    heldBy: held('shape', 'shape', 'shape', 'shape'), stiffness: ways({ across: 30_000, along: 30_000, nodding: 8000, turning: 8000 }), within: WIDE,
    source: SOURCE,
  },
  {
    name: 'battery plate', says: 'a wedge or a row of pins with a sprung catch', heldBy: held('play', 'play', 'play', 'play'),
    stiffness: ways({ across: 1500, along: 1500, nodding: 150, turning: 150 }), within: WIDE, source: SOURCE,
  },
];

/** How a build stands on the ground, by what carries it. Hands give more than they hold; only their order of size is known. */
export const GROUNDS: readonly JointType[] = [
  {
    name: 'tripod head', says: 'a fluid head, locked, on its legs', heldBy: held('shape', 'shape', 'friction', 'friction'),
    stiffness: ways({ across: 300, along: 1500, nodding: 400, turning: 300 }), within: WIDE, source: SOURCE,
  },
  {
    name: 'shoulder', says: 'a pad on a shoulder', heldBy: held('friction', 'shape', 'play', 'play'),
    stiffness: ways({ across: 5, along: 12, nodding: 15, turning: 10 }), within: { low: 0.2, high: 5 }, source: 'estimate',
  },
  {
    name: 'hands', says: 'two hands on handles', heldBy: held('friction', 'shape', 'friction', 'friction'),
    stiffness: ways({ across: 2, along: 3, nodding: 8, turning: 8 }), within: { low: 0.2, high: 5 }, source: 'estimate',
  },
  {
    name: 'vehicle mount', says: 'a rigid mount on a vehicle', heldBy: held('shape', 'shape', 'shape', 'shape'),
    stiffness: ways({ across: 2000, along: 4000, nodding: 2000, turning: 2000 }), within: WIDE, source: SOURCE,
  },
];

export function jointType(name: string): JointType | undefined {
  return [...JOINT_TYPES, ...GROUNDS].find((one) => one.name === name.toLowerCase().trim());
}
