/**
 * Rules of the shared bands at 2.4 and 5 GHz, by region, as known on `asOf`. They are shown to plan by: local rules decide, they
 * change, and power is that of the whole equipment, not of a menu.
 */
export interface RadioRule {
  readonly region: 'EU' | 'US';
  readonly lowMHz: number;
  readonly highMHz: number;
  /** Most power: radiated (EIRP), or at the connector with an aerial of up to 6 dBi. */
  readonly maxDbm: number;
  readonly powerIs: 'EIRP' | 'at the connector, aerial to 6 dBi';
  /** Most power of equipment that does not lower its power by itself, where that is less. */
  readonly withoutPowerControlDbm?: number;
  readonly indoorsOnly: boolean;
  /** Must listen for radar before it sends, and leave when it hears one. */
  readonly radarAvoidance: boolean;
  /** A wide channel may reach over from here into the next row, under the stricter of the two. */
  readonly joinsNext?: true;
  readonly source: string;
}

export const RADIO_RULES_AS_OF = '2026-05';
export const RADIO_RULES_CAUTION =
  'Local rules decide; shown are those known in May 2026. Agree frequencies with sound. Transmitters off on aircraft.';

const AT_CONNECTOR = 'at the connector, aerial to 6 dBi';

export const RADIO_RULES: readonly RadioRule[] = [
  { region: 'EU', lowMHz: 2400, highMHz: 2483.5, maxDbm: 20, powerIs: 'EIRP', indoorsOnly: false, radarAvoidance: false, source: 'EN 300 328' },
  {
    region: 'EU', lowMHz: 5150, highMHz: 5250, maxDbm: 23, powerIs: 'EIRP', indoorsOnly: true, radarAvoidance: false, joinsNext: true,
    source: 'EN 301 893; Decision (EU) 2022/179 adds limited outdoor use, less in vehicles (from memory)',
  },
  {
    region: 'EU', lowMHz: 5250, highMHz: 5350, maxDbm: 23, withoutPowerControlDbm: 20, powerIs: 'EIRP', indoorsOnly: true, radarAvoidance: true,
    source: 'EN 301 893',
  },
  {
    region: 'EU', lowMHz: 5470, highMHz: 5725, maxDbm: 30, withoutPowerControlDbm: 27, powerIs: 'EIRP', indoorsOnly: false, radarAvoidance: true,
    source: 'EN 301 893',
  },
  {
    region: 'EU', lowMHz: 5725, highMHz: 5875, maxDbm: 14, powerIs: 'EIRP', indoorsOnly: false, radarAvoidance: false,
    source: 'ERC/REC 70-03 for short-range devices, 25 mW',
  },
  {
    region: 'US', lowMHz: 2400, highMHz: 2472, maxDbm: 30, powerIs: AT_CONNECTOR, indoorsOnly: false, radarAvoidance: false,
    source: '47 CFR 15.247; channels 12 and 13 only at low power',
  },
  {
    region: 'US', lowMHz: 5150, highMHz: 5250, maxDbm: 24, powerIs: AT_CONNECTOR, indoorsOnly: false, radarAvoidance: false, joinsNext: true,
    source: '47 CFR 15.407, portable equipment, 250 mW',
  },
  {
    region: 'US', lowMHz: 5250, highMHz: 5350, maxDbm: 24, powerIs: AT_CONNECTOR, indoorsOnly: false, radarAvoidance: true,
    source: '47 CFR 15.407, 250 mW or 11 dBm + 10 log of the width in MHz, whichever is less',
  },
  // The band ends at 5725 MHz; channel 144 reaches 5 MHz into the next, whose rules are looser, so it is counted here.
  {
    region: 'US', lowMHz: 5470, highMHz: 5730, maxDbm: 24, powerIs: AT_CONNECTOR, indoorsOnly: false, radarAvoidance: true,
    source: '47 CFR 15.407, 250 mW or 11 dBm + 10 log of the width in MHz, whichever is less',
  },
  {
    region: 'US', lowMHz: 5730, highMHz: 5850, maxDbm: 30, powerIs: AT_CONNECTOR, indoorsOnly: false, radarAvoidance: false,
    source: '47 CFR 15.407, 1 W',
  },
];

/** The rule that covers the whole of a span of frequencies, the stricter where two rows that join do, or none: there it may not send. */
export function radioRule({ region, lowMHz, highMHz }: { region: RadioRule['region']; lowMHz: number; highMHz: number }): RadioRule | undefined {
  const first = RADIO_RULES.findIndex((rule) => rule.region === region && rule.lowMHz <= lowMHz && lowMHz < rule.highMHz);
  const [rule, next] = [RADIO_RULES[first], RADIO_RULES[first + 1]];
  if (rule === undefined || highMHz <= rule.highMHz) return rule;
  if (rule.joinsNext !== true || next === undefined || highMHz > next.highMHz) return undefined;
  return [rule, next].toSorted((a, b) => Number(b.radarAvoidance) - Number(a.radarAvoidance) || a.maxDbm - b.maxDbm)[0];
}

/** How long a channel shared with radar must be listened to before sending, and left after radar was heard. */
export const RADAR_AVOIDANCE = {
  listenS: 60,
  /** On channels that touch 5600 to 5650 MHz, weather radar, in the EU. */
  listenWeatherRadarS: 600,
  weatherRadarMHz: [5600, 5650],
  leaveWithinS: 10,
  stayAwayMin: 30,
  source: 'EN 301 893 and 47 CFR 15.407 (from memory)',
} as const;

/** Silence before sending on a span of frequencies, s: 0 where no radar is minded. */
export function radarListenS(rule: RadioRule, { lowMHz, highMHz }: { lowMHz: number; highMHz: number }): number {
  if (!rule.radarAvoidance) return 0;
  const [weatherLow, weatherHigh] = RADAR_AVOIDANCE.weatherRadarMHz;
  const touchesWeather = highMHz > weatherLow && lowMHz < weatherHigh;
  return rule.region === 'EU' && touchesWeather ? RADAR_AVOIDANCE.listenWeatherRadarS : RADAR_AVOIDANCE.listenS;
}
