/** The files that leave the program, the same ones that the command line writes: each by itself, or those chosen as one zip. */
import { lazy, Suspense, type ReactNode } from 'react';
import {
  FORMATS,
  isFolder,
  productsIn,
  productsOf,
  type Format,
  type Product,
} from '../../exports/products/catalogue.ts';
import type { Setting } from '../../exports/products/formats.ts';
import { FORECAST } from '../../core/words/forecast.ts';
import { useDocument } from '../../store/page.ts';
import { useKept } from '../kit/kept.ts';
import { Refused } from '../kit/Refused.tsx';
import { Section } from '../kit/Section.tsx';
import { PrintPart, useSurface } from './PrintPart.tsx';
import { printSettings, usePrint } from '../kit/print.ts';
import { KINDS, pieceOf, productName, readChosen, zipName, type Kind } from './take-away.ts';
import type { Taking } from './useTaking.ts';
import { WastePaper } from './WastePaper.tsx';
import './take-away.css';

/** Tubes. Exact solids of more, densely joined, take minutes and more than a gigabyte. */
const MANY_SOLIDS = 100;

const Papers = lazy(() => import('./Papers.tsx'));

export function TakeAway({ taking }: { taking: Taking }): ReactNode {
  const fileName = useDocument((state) => state.fileName);
  const tubes = useDocument((state) => state.derived.tubes.length);
  const stickSorts = useDocument((state) => state.job.stickSorts);
  const [chosen, choose] = useKept('take-away', readChosen);
  const [print, keepPrint] = usePrint();
  const [surface, keepSurface] = useSurface();
  const [forecast, keepForecast] = useKept('forecast-in-files', readYes);
  const busy = taking.progress !== null;
  const setting: Setting = { print: printSettings(print), surface, forecast };

  const takeOne = (product: Product): void =>
    taking.take([product], setting, isFolder(product) ? zipName(fileName) : null);
  const flip = (format: Format): void =>
    choose(chosen.includes(format) ? chosen.filter((each) => each !== format) : [...chosen, format]);

  return (
    <div className="take-away">
      <WastePaper />
      <ul className="take-kinds">
        {KINDS.map((kind) => (
          <li key={kind.format} className="take-kind">
            <Choice kind={kind} chosen={kind.format === 'json' || chosen.includes(kind.format)} onFlip={flip} />
            <span className="row">
              {productsIn(kind.format, { stickSorts }).map((product) => (
                <button
                  key={product}
                  type="button"
                  className="press press-quiet take-file"
                  disabled={busy}
                  onClick={() => takeOne(product)}
                >
                  {productName(product)}
                </button>
              ))}
            </span>
            {kind.format === 'step' && tubes > MANY_SOLIDS && (
              <p className="notice-warning take-before">
                <span aria-hidden="true">▲ </span>
                {tubes} tubes: takes minutes and much memory.
              </p>
            )}
          </li>
        ))}
      </ul>
      <label className="take-choice">
        <input
          type="checkbox"
          aria-label={FORECAST}
          checked={forecast}
          onChange={(event) => keepForecast(event.target.checked)}
        />
        <span>
          <strong>{FORECAST}</strong>
          <span className="small under">a page in sheets.pdf, a block in fabrication.json; takes a second or more</span>
        </span>
      </label>
      <button
        type="button"
        className="press take-all"
        disabled={busy}
        onClick={() => taking.take(productsOf(chosen, { stickSorts }), setting, zipName(fileName))}
      >
        {chosen.length === FORMATS.length ? 'Take all as one zip' : 'Take what is ticked as one zip'}
      </button>
      <div className="take-notes">
        <Making taking={taking} />
      </div>
      <Section title="For the dossier: certificates and photos" onlyOpen>
        <Suspense fallback={<p className="small">One moment.</p>}>
          <Papers />
        </Suspense>
      </Section>
      <Section title="Paper, and what the printer makes of it">
        <PrintPart print={print} onPrint={keepPrint} surface={surface} onSurface={keepSurface} />
      </Section>
    </div>
  );
}

const readYes = (kept: unknown): boolean => kept === true;

function Choice(props: { kind: Kind; chosen: boolean; onFlip: (format: Format) => void }): ReactNode {
  const { format, title, holds } = props.kind;
  return (
    <label className="take-choice">
      <input
        type="checkbox"
        aria-label={title}
        checked={props.chosen}
        disabled={format === 'json'}
        onChange={() => format !== 'json' && props.onFlip(format)}
      />
      <span>
        <strong>{title}</strong>
        <span className="small under">{holds}</span>
      </span>
    </label>
  );
}

/** How it goes, and how it went. */
function Making({ taking: { progress, trouble, ended, notes, cancel } }: { taking: Taking }): ReactNode {
  if (progress !== null) {
    const { name, nth, of, done, total, piece, before } = inWords(progress);
    return (
      <div className="take-making" role="group" aria-label="Being made">
        <p role="status">
          <strong>{name}</strong>
          {of > 1 && <span className="small">{` ${nth} of ${of}`}</span>}
        </p>
        <progress max={total} value={done} aria-label={name} />
        <p className="small figure">{total > 1 ? `${piece} ${Math.min(done + 1, total)} of ${total}` : before}</p>
        <button type="button" className="press press-quiet" onClick={cancel}>
          Cancel
        </button>
      </div>
    );
  }
  return (
    <>
      <Refused why={trouble ?? ''} />
      {ended !== null && (
        <p className="small" role="status">
          {ended}
        </p>
      )}
      {notes.map((note) => (
        <p key={note} className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {note}
        </p>
      ))}
    </>
  );
}

function inWords(progress: NonNullable<Taking['progress']>) {
  const before = 'a moment';
  if (progress === 'zip') {
    return { name: 'Putting them into one file', nth: 1, of: 1, done: 0, total: 1, piece: '', before };
  }
  const { product } = progress;
  return {
    ...progress,
    name: productName(product),
    piece: pieceOf(product),
    before: product === 'cage.step' ? 'loading what makes solids' : before,
  };
}
