import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { Fact } from '../components/load-table.js';
import { showDate, showMoney } from '../components/show-quantity.js';
import { vinDoubtWords } from '../words/vin-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

/** What the trailer is on paper. */
export function PaperSection({ caller, screen }: SectionProps) {
  const { trailer } = screen;
  const vinDoubt = trailer.vin === null ? null : vinDoubtWords(trailer.vin);
  return (
    <section class="stack-tight" aria-labelledby="papers">
      <h2 class="chalked" id="papers">
        Papers
      </h2>
      <dl class="facts sheet">
        <Fact name="VIN" value={trailer.vin} />
        <Fact name="Registration plate" value={trailer.registrationPlate} />
        <Fact
          name="Registered until"
          value={trailer.registrationExpiresOn && showDate(trailer.registrationExpiresOn)}
        />
        <Fact name="Insured until" value={trailer.insuranceExpiresOn && showDate(trailer.insuranceExpiresOn)} />
        <Fact name="Bought" value={trailer.boughtOn && showDate(trailer.boughtOn)} />
        <Fact name="Paid" value={trailer.boughtForCents === null ? null : showMoney(trailer.boughtForCents)} />
        <Fact name="Stored" value={trailer.stored && (trailer.stored === 'cover' ? 'Under cover' : 'In the open')} />
        {trailer.note && <Fact name="Note" value={trailer.note} />}
      </dl>
      {vinDoubt !== null && <p>{vinDoubt}</p>}
      {may(caller, 'shop') && (
        <p class="actions">
          <a class="button" href={`/trailers/${trailer.id}/papers`}>
            Change the papers
          </a>
          {trailer.status === 'in-service' && may(caller, 'owner') && (
            <a class="button" href={`/trailers/${trailer.id}/gone`}>
              Sold or scrapped
            </a>
          )}
        </p>
      )}
    </section>
  );
}
