/** Sticks that were sawn, the last first, each with the way back. */
import type { ReactNode } from 'react';
import { setSawnBatch } from '../../core/edit/stock.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Sawn } from '../../core/job/kinds/sawn.ts';
import { unsaw } from '../../core/shape/saw-stick.ts';
import { stickLengthInWords } from '../../core/words/rack.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Length } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';

/** `say` what was done to whoever hears the screen; `onBack` puts the hand somewhere when the row that it was in is gone. */
interface SawnSoFarProps {
  readonly say: (words: string) => void;
  readonly onBack: () => void;
}

export function SawnSoFar(props: SawnSoFarProps): ReactNode {
  const sawn = useDocument((state) => state.job.sawn);
  if (sawn.length === 0) return null;
  return (
    <Section title="Sawn so far" count={sawn.length}>
      <ul className="sawn">
        {sawn.toReversed().map((stick) => (
          <SawnStick key={stick.id} stick={stick} {...props} />
        ))}
      </ul>
    </Section>
  );
}

function SawnStick({ stick, say, onBack }: { stick: Sawn } & SawnSoFarProps): ReactNode {
  const { id, section, length, batch, cuts, left, on } = stick;
  const job = useDocument((state) => state.job);
  const byId = useDocument((state) => state.derived.byId);
  const unit = useDocument((state) => state.job.lengthUnit);
  const name = shownName(job.sections.find((each) => each.id === section)!.name);
  const said = `${name}, ${stickLengthInWords(length, unit)}${batch === undefined ? '' : `, batch ${shownName(batch)}`}`;
  return (
    <li>
      <p>
        <strong>{said}</strong>
        {on !== '' && <span className="figure"> {on}</span>}:{' '}
        {cuts
          .map(({ tube }) => (tube === undefined ? 'spare' : (byId.get(tube)?.name ?? 'a tube that is gone')))
          .join(', ')}
        ; <Length mm={left} withUnit /> left
      </p>
      <TextField
        label="Heat or batch of it, as it stands on the steel"
        value={batch ?? ''}
        mayBeEmpty
        {...jobEdit<string>('Batch of a stick', (of, next) => setSawnBatch(of, id, next))}
      />
      <Command
        quiet
        step="A stick not sawn after all"
        label={`${said}: it was not sawn`}
        run={(of) => unsaw(of, jobDocument.getState().derived, id)}
        onDone={() => {
          say(`${said}: not sawn after all.`);
          onBack();
        }}
      >
        It was not sawn
      </Command>
    </li>
  );
}
