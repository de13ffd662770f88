import { assumptions } from '../Assumption.ts';

export const lines = assumptions('lines', {
  loopDelayMs: { value: 0, low: 0, high: 1, unit: 'ms', says: 'delay of a loop-out that states none', source: 'common practice: a loop-out repeats the bits' },
  converterDelayMs: { value: 10, low: 1, high: 45, unit: 'ms', says: 'delay of a device that changes the picture and states none', source: 'common practice: from some lines to a frame' },
  passiveHdmiM: { value: 5, low: 2, high: 8, unit: 'm', says: 'length of a passive HDMI cable that usually carries level 1.4', source: 'common practice; the standard states no length' },
  passiveFastHdmiM: { value: 3, low: 1, high: 5, unit: 'm', says: 'length of a passive HDMI cable that usually carries level 2.0', source: 'common practice; the standard states no length' },
  walkedMarginDb: { value: 4, low: 3, high: 6, unit: 'dB', says: 'margin a walked link should keep: people move, aerials turn', source: 'common practice, estimate' },
  linkDoubtDb: { value: 10, low: 6, high: 15, unit: 'dB', says: 'how far an estimated link may be out, either way', source: 'estimate; ITU-R P.1238 states 12 dB of scatter indoors at about 5 GHz (from memory)' },
  bodyLossDb: { value: 8, low: 3, high: 20, unit: 'dB', says: 'loss through a person between the aerials', source: 'common practice, estimate' },
  wallLossDb: { value: 10, low: 4, high: 20, unit: 'dB', says: 'loss through a wall of unknown kind', source: 'common practice, estimate: 4 dB light, 20 dB concrete' },
  openLossCoefficient: { value: 20, low: 20, high: 25, unit: 'ratio', says: 'loss in dB for ten times the distance in the open', source: 'ITU-R P.525, free space' },
  waterLossDb: { value: 6, low: 0, high: 15, unit: 'dB', says: 'fade of a path over water, where the reflection works against it', source: 'estimate; common practice: links over water break up sooner' },
  indoorLossCoefficient: { value: 28, low: 25, high: 32, unit: 'ratio', says: 'loss in dB for ten times the distance indoors', source: 'ITU-R P.1238, house at 5.2 GHz' },
  eirpDbm: { value: 20, low: 14, high: 23, unit: 'dBm', says: 'radiated power of a radio that states none', source: 'common practice: 100 mW' },
  receiveGainDbi: { value: 2, low: 0, high: 5, unit: 'dBi', says: 'gain of an aerial that states none', source: 'common practice: a rod aerial' },
});
