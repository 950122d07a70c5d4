import { letterHtml } from './letter-html.js';
import type { Paper, Written } from './paper.js';
import { plainText } from './plain-text.js';

/** Subjects are cut by phones near 40 characters and by programs near 78; the first words carry the meaning. */
const LONGEST_SUBJECT = 150;

/** Sets a letter as text and as HTML. */
export function written(paper: Paper): Written {
  const subject = oneLine(paper.subject);
  return { subject, text: plainText({ ...paper, subject }), html: letterHtml({ ...paper, subject }) };
}

/** A name with a line break in it must not become a header of its own. */
function oneLine(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length <= LONGEST_SUBJECT ? line : `${line.slice(0, LONGEST_SUBJECT - 1).trimEnd()}…`;
}
