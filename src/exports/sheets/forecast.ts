/** The forecast of fit on paper: every joint, the worst first, with what feeds it and what would cure it. */
import type { Forecast, JointForecast } from '../../core/forecast/types.ts';
import {
  cureInWords,
  curesInOrder,
  feedsInWords,
  FORECAST,
  FORECAST_LEAVES_OUT,
  FORECAST_MEANS,
  jointInWords,
  shareInWords,
} from '../../core/words/forecast.ts';
import { gapInWords } from '../../core/words/gaping.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Sheet } from '../../drawing/types.ts';
import { foot } from './cautions.ts';
import type { Context } from './context.ts';
import { fillPages, gap, paragraph, part, stacked, type Block } from './page.ts';

const HEADING = { size: 4.6, bold: true, most: 1, after: 3 };

export function forecastSheets(context: Context, { joints }: Forecast): Sheet[] {
  const { derived, letters, paper, width } = context;
  const heading = paragraph(letters, `${FORECAST}: ${shownName(derived.job.name)}`, width, HEADING);
  const said = [FORECAST_MEANS, FORECAST_LEAVES_OUT].map((words) => paragraph(letters, words, width));
  return fillPages(
    paper,
    FORECAST,
    [part(heading, ...said, gap(2)), part(...joints.map((joint) => row(context, joint)))],
    heading,
    foot(context, FORECAST, jobRevision(derived)),
  );
}

function row({ derived, unit, letters, width }: Context, joint: JointForecast): Block {
  const feeds = feedsInWords(derived, joint);
  const { cures, alike } = curesInOrder(joint.cures, unit);
  const lines = [
    ...(feeds === null ? [] : [feeds]),
    ...cures.map((cure) => cureInWords(derived, joint, cure, unit)),
    ...(alike === null ? [] : [alike]),
  ];
  return stacked(
    paragraph(
      letters,
      `${jointInWords(derived, joint)}: ${gapInWords(joint.gap, unit)}, ${shareInWords(joint.gap)}`,
      width,
      {
        bold: true,
        after: 0,
      },
    ),
    ...lines.map((line) => paragraph(letters, line, width, { after: 0 })),
    gap(1.6),
  );
}
