import { assumptions } from '../Assumption.ts';

export const optics = assumptions('optics', {
  lensTransmittance: { value: 0.8, low: 0.65, high: 0.95, unit: 'share', says: 'light that passes a lens whose T-stop and f-number are not both known', source: 'common practice: T-stops run a tenth to a third of a stop behind f-numbers' },
  attachmentTransmittance: { value: 0.85, low: 0.7, high: 0.95, unit: 'share', says: 'light that passes a block or focuser in front', source: 'common practice: a quarter of a stop' },
});
