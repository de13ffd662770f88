import { assumptions } from '../Assumption.ts';

export const power = assumptions('power', {
  contactOhm: { value: 0.008, low: 0.003, high: 0.025, unit: 'ohm', says: 'resistance of a plug in its socket, one contact', source: 'common practice, estimate: new connectors of this size 3 to 10 milliohm, worn ones more' },
  wireGauge: { value: 20, low: 18, high: 24, unit: 'count', says: 'gauge of a supply cable that states none', source: 'common practice' },
  unfoundCableMm: { value: 500, low: 300, high: 1000, unit: 'mm', says: 'length of a supply cable still to be found', source: 'common practice' },
  regulatorEfficiency: { value: 0.88, low: 0.8, high: 0.95, unit: 'share', says: 'share of the power that passes a regulator', source: 'common practice: switched regulators' },
  motorMovesShare: { value: 0.15, low: 0.05, high: 0.35, unit: 'share', says: 'share of the day that a lens motor moves', source: 'estimate' },
  temperatureC: { value: 20, low: 10, high: 25, unit: '°C', says: 'temperature of a day that states none', source: 'estimate' },
  workHours: { value: 10, low: 8, high: 12, unit: 'h', says: 'hours of a day that states none', source: 'common practice' },
  usableCharge: { value: 0.7, low: 0.5, high: 0.85, unit: 'share', says: 'share of a pack that should be usable before a device drops out', source: 'estimate' },
  changeS: { value: 45, low: 20, high: 120, unit: 's', says: 'time to change a pack', source: 'estimate' },
  calibrateS: { value: 60, low: 20, high: 150, unit: 's', says: 'time to calibrate a motor that forgot its map', source: 'common practice, estimate' },
  takes: { value: 4, low: 2, high: 8, unit: 'count', says: 'takes of a shot that states none', source: 'estimate' },
  takeMin: { value: 2, low: 0.5, high: 5, unit: 'min', says: 'length of a take that states none', source: 'estimate' },
  resetMin: { value: 5, low: 2, high: 10, unit: 'min', says: 'time between takes that states none', source: 'estimate' },
  reserveMin: { value: 3, low: 1, high: 10, unit: 'min', says: 'running time that should be left in a pack at the end of a take', source: 'common practice' },
  chargeHours: { value: 4, low: 2.5, high: 6, unit: 'h', says: 'time to charge a pack that states none', source: 'common practice' },
  batteryKinds: { value: 2, low: 1, high: 3, unit: 'count', says: 'kinds of battery that a small crew keeps apart', source: 'common practice' },
});
