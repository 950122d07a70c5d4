const NEWLINE = 0x0a;

/**
 * Cuts a stream into lines, each with its newline. Cut as bytes and at line feeds only: the usual line readers also
 * cut at a carriage return or at Unicode's own line separators, which a remark someone typed may contain.
 */
export async function* backupLines(stream: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  let begun: Buffer[] = [];
  for await (const chunk of stream) {
    let start = 0;
    for (let end = chunk.indexOf(NEWLINE); end !== -1; end = chunk.indexOf(NEWLINE, start)) {
      yield Buffer.concat([...begun, chunk.subarray(start, end + 1)]);
      begun = [];
      start = end + 1;
    }
    if (start < chunk.length) begun.push(chunk.subarray(start));
  }
  if (begun.length > 0) yield Buffer.concat(begun);
}
