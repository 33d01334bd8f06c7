/** What is taken to the car: a sheet to fill in, or the walk on a telephone; both ask for the same places. */
import { lazy, Suspense, useState, type ReactNode } from 'react';
import { LAYOUTS, type LayoutName } from '../../core/survey/spots.ts';
import { layoutMeant } from '../../core/survey/to-measure.ts';
import { AT_THE_CAR } from '../../core/words/measuring.ts';
import { LAYOUT_WORDS } from '../../core/words/starters.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { requestFiles } from '../../workers/client.ts';
import { SelectField } from '../fields/Fields.tsx';
import { downloadFile } from '../kit/download.ts';
import { printSettings, usePrint } from '../kit/print.ts';
import { Refused } from '../kit/Refused.tsx';

const Walk = lazy(() => import('./Walk.tsx'));

export default function AtTheCar(): ReactNode {
  const asked = useEditor((state) => state.lastAsked?.layout);
  const meant = useDocument((state) => layoutMeant(state.job));
  const [chosen, choose] = useState<LayoutName | null>(null);
  const [isMaking, setMaking] = useState(false);
  const [trouble, setTrouble] = useState('');
  const [isWalking, walk] = useState(false);
  const [print] = usePrint();
  const layout = meant === null ? null : (chosen ?? asked ?? meant);

  async function take(): Promise<void> {
    setMaking(true);
    setTrouble('');
    try {
      const setting = {
        print: { ...printSettings(print), day: dayOf(new Date()) },
        surface: 'outer',
        forecast: false,
        ...(layout !== null && { layout }),
      } as const;
      const { job } = jobDocument.getState();
      const made = await requestFiles(job, ['measuring.pdf'], setting, () => {}, new AbortController().signal);
      made.files.forEach(downloadFile);
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
    setMaking(false);
  }

  return (
    <section className="fields" aria-label="At the car">
      {layout !== null && (
        <SelectField
          label="Places for"
          value={layout}
          choices={LAYOUTS.map((value) => ({ value, label: LAYOUT_WORDS[value].name }))}
          onChoose={(value) => choose(value as LayoutName)}
        />
      )}
      <div className="row">
        <button type="button" className="press" onClick={() => walk(true)}>
          {AT_THE_CAR}
        </button>
        <button type="button" className="press press-quiet" disabled={isMaking} onClick={() => void take()}>
          {isMaking ? 'Being made…' : 'Sheet to fill in, on paper'}
        </button>
      </div>
      <Refused why={trouble} />
      {isWalking && (
        <Suspense fallback={null}>
          <Walk layout={layout} closed={() => walk(false)} />
        </Suspense>
      )}
    </section>
  );
}
