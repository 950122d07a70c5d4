/** What every letter carries of this service: where its pages are, and which domain its Message-IDs end in. */
export class Letterhead {
  constructor(
    /** The address people open, with no slash at its end. */
    readonly baseUrl: string,
    /** The bare address mails are sent from. */
    readonly fromAddress: string,
  ) {}

  /** `From` as people write it, `Yard <yard@example.com>` or `yard@example.com`. Throws RangeError without an address. */
  static of(baseUrl: string, mailFrom: string): Letterhead {
    const address = /<?([^\s<>@]+@[^\s<>@]+?)>?$/.exec(mailFrom.trim())?.[1];
    if (address === undefined) throw new RangeError(`"${mailFrom}" has no mail address in it`);
    return new Letterhead(baseUrl, address);
  }

  /** The Message-ID of a notice: its own id, so that it is fixed as long as the row lives. */
  messageId(noticeId: string): string {
    return `<${noticeId}@${this.domain}>`;
  }

  /** RFC 2919: a name for the stream of mails of one yard. */
  listId(yardName: string, yardSlug: string): string {
    return `${yardName.replace(/([^\x20-\x7e]|[<>"\\\s])+/g, ' ').trim()} <${yardSlug}.axlebook.${this.domain}>`;
  }

  private get domain(): string {
    return this.fromAddress.slice(this.fromAddress.lastIndexOf('@') + 1);
  }
}
