import type { Entry, Paper, Section } from './paper.js';

/** Narrow enough to be quoted in an answer without breaking. RFC 5322, 2.1.1: no more than 78. */
const WIDTH = 72;

/** The letter as plain text, complete by itself: nothing is only in the HTML. */
export function plainText(paper: Paper): string {
  const blocks = [
    paper.greeting,
    ...paper.opening,
    ...(paper.summary.length === 0 ? [] : [bullets(paper.summary)]),
    ...paper.sections.map(section),
    ...(paper.button === null ? [] : [`${paper.button.text}:\n${paper.button.url}`]),
    '-- ',
    ...paper.closing,
    paper.yardName,
  ];
  return `${blocks.map(wrapped).join('\n\n').replace('\n\n-- \n\n', '\n\n-- \n')}\n`;
}

function section({ heading, entries }: Section): string {
  return [`${heading.toUpperCase()}\n${'='.repeat(heading.length)}`, entries.map(entry).join('\n\n---\n\n')].join(
    '\n\n',
  );
}

function entry({ title, mark, says, todo, facts, link }: Entry): string {
  return [
    mark === null ? title : `${title}\n[${mark}]`,
    ...(says.length === 0 ? [] : [says.join('\n')]),
    ...(todo.length === 0 ? [] : [bullets(todo)]),
    ...(facts.length === 0 ? [] : [facts.map(({ label, text }) => `${label}: ${text}`).join('\n')]),
    ...(link === null ? [] : [`${link.text}: ${link.url}`]),
  ].join('\n\n');
}

function bullets(lines: readonly string[]): string {
  return lines.map((line) => `* ${line}`).join('\n');
}

function wrapped(block: string): string {
  return block
    .split('\n')
    .map((line) => wrap(line))
    .join('\n');
}

function wrap(line: string): string {
  const hang = line.startsWith('* ') ? '  ' : '';
  const rows: string[] = [];
  let row = '';
  for (const word of line.split(' ')) {
    // An address is never broken, however long.
    if (row !== '' && `${row} ${word}`.length > WIDTH) {
      rows.push(row);
      row = `${hang}${word}`;
    } else {
      row = row === '' ? word : `${row} ${word}`;
    }
  }
  return [...rows, row].join('\n');
}
