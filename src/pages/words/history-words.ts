/** What was done, as the history says it. Actions are named after the use cases. */
const ACTIONS: Readonly<Record<string, string>> = {
  'add-trailer': 'Added the trailer',
  'change-trailer': 'Changed what is on file about the trailer',
  'update-trailer': 'Changed what is on file about the trailer',
  'revise-build': 'Entered a new version of the build sheet',
  'correct-build': 'Corrected the build sheet',
  'fit-part': 'Fitted a part',
  'remove-part': 'Took a part off',
  'correct-part': 'Corrected a part',
  'record-trip': 'Recorded a trip',
  'correct-trip': 'Corrected a trip',
  'withdraw-trip': 'Took a trip back',
  'record-reading': 'Recorded a meter reading',
  'correct-reading': 'Corrected a meter reading',
  'withdraw-reading': 'Took a meter reading back',
  'record-check': 'Recorded a check',
  'correct-check': 'Corrected a check',
  'withdraw-check': 'Took a check back',
  'hand-out': 'Handed it out',
  'take-back': 'Took it back',
  'withdraw-handover': 'Took the record of a handover back',
  'open-hold': 'Put it on hold',
  'lift-hold': 'Lifted the hold',
  'sell-trailer': 'Noted it as sold',
  'mark-sold': 'Noted it as sold',
  'book-job': 'Booked a job',
  'change-job': 'Changed a job',
  'cancel-job': 'Cancelled a job',
  'finish-job': 'Closed a job as done',
};

const DOORS: Readonly<Record<string, string>> = {
  page: 'on the pages',
  api: 'by a program',
  seed: 'with the demo yard',
  mail: 'from a mail',
  job: 'by the clock',
  import: 'by import',
};

export function actionWords(action: string): string {
  const words = ACTIONS[action] ?? action.replaceAll('-', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

export function doorWords(door: string): string {
  return DOORS[door] ?? `through ${door}`;
}
