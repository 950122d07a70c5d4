import type { Option } from '../components/field.js';

/** Those of the United States first, by the names people use; then all others by their own. */
const NEAR: readonly Option[] = [
  { value: 'America/New_York', label: 'Eastern (New York)' },
  { value: 'America/Chicago', label: 'Central (Chicago)' },
  { value: 'America/Denver', label: 'Mountain (Denver)' },
  { value: 'America/Phoenix', label: 'Mountain without daylight saving (Phoenix)' },
  { value: 'America/Los_Angeles', label: 'Pacific (Los Angeles)' },
  { value: 'America/Anchorage', label: 'Alaska (Anchorage)' },
  { value: 'Pacific/Honolulu', label: 'Hawaii (Honolulu)' },
];

const near = new Set(NEAR.map(({ value }) => value));

/** Every time zone a yard may be in, for a list to choose from. */
export const TIME_ZONES: readonly Option[] = [
  ...NEAR,
  ...Intl.supportedValuesOf('timeZone')
    .filter((zone) => !near.has(zone))
    .map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
];
