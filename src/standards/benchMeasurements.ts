/** Bench measurements that turn an estimate into a figure. Common practice; each needs no more than a workshop drawer. */
export interface BenchMeasurement {
  readonly says: string;
  readonly how: string;
  readonly minutes: number;
}

export const BENCH_MEASUREMENTS: Readonly<Record<string, BenchMeasurement>> = {
  delay: { says: 'Delay of the picture', how: 'Film a running stopwatch and the screen that shows it in one shot, with a phone at 240 frames; read the difference.', minutes: 5 },
  'ring torque': { says: 'Torque at the ring', how: 'Wrap tape round the gear, pull it off with a luggage scale: force times radius. Again after an hour in the freezer.', minutes: 10 },
  'infinity and flange': { says: 'Infinity and flange', how: 'At full aperture, note the ring positions where a distant lamp is sharp for vertical lines and for horizontal lines.', minutes: 15 },
  squeeze: { says: 'Squeeze', how: 'Film a circle far, at middle distance and near; measure width against height on the recording.', minutes: 10 },
  roll: { says: 'Roll of the squeeze axis', how: 'Hold a torch in the frame and set its streak level against a spirit level in shot.', minutes: 5 },
  pupils: { says: 'Entrance pupils', how: 'Turn the camera on the rods until two sticks show no parallax; once upright, once level.', minutes: 20 },
  focuser: { says: 'Scale of the focuser', how: 'Tape five marks round the ring at five taped distances and read their angles.', minutes: 15 },
  breathing: { says: 'Breathing', how: 'Film a ruler at both ends of the rack and compare what fills the frame.', minutes: 5 },
  'jump and play': { says: 'Jump and play', how: 'Film a chart while pushing the gear to and fro with the luggage scale; hold the crank still and try the gear for play.', minutes: 10 },
  watts: { says: 'Power drawn', how: 'Put an inline meter in the supply; note running and start-up peak.', minutes: 5 },
  'visible blur': { says: 'Visible blur', how: 'Detune focus on the puller’s monitor, once each way, until it is called soft; note both ring positions.', minutes: 5 },
  link: { says: 'Reach of the link', how: 'Walk away with the receiver until the picture breaks up, aerials as on the day; note the distance.', minutes: 10 },
  stiffness: { says: 'Stiffness', how: 'Hang a known weight on a known arm and read how far the image shifts.', minutes: 10 },
};
