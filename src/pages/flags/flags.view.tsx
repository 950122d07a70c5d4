import { FLAG_RULES } from '../../rules/flags/flag.js';
import type { Caller } from '../../use-cases/caller.js';
import type { FlagsScreen } from '../../use-cases/show/show-flags.js';
import { Caution } from '../components/caution.js';
import { Choice, Field } from '../components/field.js';
import { FlagCard } from '../components/flag-card.js';
import { Pager } from '../components/pager.js';
import { Head, Page } from '../page.js';
import { ruleWords } from '../words/flag-words.js';

interface FlagsProps {
  readonly caller: Caller;
  readonly screen: FlagsScreen;
}

export function FlagsPage({ caller, screen }: FlagsProps) {
  const { filter, flags } = screen;
  const query = {
    ...(filter.text && { text: filter.text }),
    ...(filter.severity && { severity: filter.severity }),
    ...(filter.rule && { rule: filter.rule }),
  };
  const typed = { values: query, problems: [] };
  const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
  return (
    <Page title="Flags" caller={caller} door="Flags">
      <Head title="Flags" lede="Use or condition past a limit, worst first, each with its evidence." />
      <form class="filter sheet" method="get" action="/flags">
        <Field typed={typed} name="text" label="Trailer" type="search" maxLength={40} />
        <Choice
          typed={typed}
          name="severity"
          label="How bad"
          none="Any"
          options={[
            { value: 'stop', label: 'Stop: do not load' },
            { value: 'limit', label: 'Over a rating or a law' },
            { value: 'watch', label: 'Heading there' },
          ]}
        />
        <Choice
          typed={typed}
          name="rule"
          label="What"
          none="Any"
          options={FLAG_RULES.map((value) => ({ value, label: ruleWords(value) }))}
        />
        <div class="actions">
          <button class="button" type="submit">
            Show
          </button>
        </div>
      </form>
      {flags.rows.length === 0 ? (
        <p class="empty">{Object.keys(query).length > 0 ? 'No flag is like that.' : 'No flag is up.'}</p>
      ) : (
        <ul class="cards">
          {flags.rows.map(({ trailer, flag }) => (
            <FlagCard
              key={`${trailer.id} ${flag.key}`}
              flag={flag}
              trailerId={trailer.id}
              trailer={trailer}
              names={names}
              today={caller.today}
            />
          ))}
        </ul>
      )}
      <Pager
        paging={{ page: screen.page, perPage: screen.perPage, total: flags.total }}
        path="/flags"
        query={query}
        what="flags"
      />
      <Caution />
    </Page>
  );
}
