import { assumptions } from '../Assumption.ts';

const MODEL = 'estimate, common practice: two hands, everything within reach; time one change of yours and state it';

export const swap = assumptions('swap', {
  offMin: { value: 0.8, low: 0.4, high: 1.5, unit: 'min', says: 'taking one piece off or putting one on, cap and case included', source: MODEL },
  keyMin: { value: 0.5, low: 0.3, high: 1, unit: 'min', says: 'opening or closing one joint with a key', source: MODEL },
  handMin: { value: 0.2, low: 0.1, high: 0.4, unit: 'min', says: 'opening or closing one joint by hand', source: MODEL },
  settingMin: { value: 0.4, low: 0.2, high: 0.8, unit: 'min', says: 'moving one clamp, arm or plate to its new place', source: MODEL },
  rollMin: { value: 1.5, low: 0.5, high: 3, unit: 'min', says: 'setting the squeeze axis of a block upright again', source: MODEL },
  calibrateMin: { value: 0.7, low: 0.4, high: 1.5, unit: 'min', says: 'calibrating a motor to the stops of a lens and choosing its marks', source: MODEL },
  gimbalMin: { value: 3, low: 1.5, high: 6, unit: 'min', says: 'balancing a gimbal again about its axes', source: MODEL },
  buildMin: { value: 15, low: 8, high: 30, unit: 'min', says: 'changing over to another build with the same camera body', source: MODEL },
  standbyMin: { value: 2, low: 1, high: 4, unit: 'min', says: 'going over to another camera that stands ready', source: MODEL },
  allowedMin: { value: 8, low: 5, high: 12, unit: 'min', says: 'time for a lens change before the set waits', source: 'common practice: as long as relighting a close shot' },
  movedMm: { value: 1, low: 0.5, high: 2, unit: 'mm', says: 'move of a clamp that is worth undoing it for', source: 'common practice' },
  movedDeg: { value: 1, low: 0.5, high: 2, unit: 'deg', says: 'turn of a clamp that is worth undoing it for', source: 'common practice' },
});
