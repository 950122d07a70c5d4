import { readVin } from '../../rules/trailer/vin.js';

/** What is odd about a VIN on file, and what to look at. Null when nothing is. It stops nobody from saving. */
export function vinDoubtWords(vin: string): string | null {
  const reading = readVin(vin);
  switch (reading.kind) {
    case 'right':
      return null;
    case 'bad-character':
      return `No VIN holds "${reading.character}" (place ${reading.place}). Read it again on the frame.`;
    case 'bad-length':
      return `This VIN has ${reading.length} characters; one from model year 1981 on has 17. Read it again on the frame, unless the trailer is older or home-built.`;
    case 'bad-check-digit':
      return `A character of this VIN is misread: by the others its ninth should be ${reading.expected}, and it is ${reading.found}. Read it again on the frame.`;
  }
}
