/** One figure of an article of a rule sheet, or nothing where the book has none. */
import type { ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import type { RuleCheck, RuleSize } from '../../core/job/kinds/rule-check.ts';
import { quantityOfFigure, type FigureName, type FigureValue } from '../../core/rules/figures.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from './EntryField.tsx';
import { orNothing } from './kinds.ts';
import { figureKind, figureUnit, sizesKind } from './rule-figures.ts';

export function FigureField(props: {
  label: string;
  /** The article, or what it will be. */
  check: RuleCheck;
  name: FigureName;
  value: FigureValue | null;
  takesFocus?: boolean;
  commit: (value: FigureValue | null) => readonly Fault[];
}): ReactNode {
  const { check, name, value, ...rest } = props;
  const unit = useDocument((state) => state.job.lengthUnit);
  const quantity = quantityOfFigure(check, name);
  if (quantity === 'sizes') {
    return (
      <EntryField<readonly RuleSize[]>
        {...rest}
        kind={sizesKind(unit)}
        unit={figureUnit(quantity, unit)}
        value={typeof value === 'number' ? [] : (value ?? [])}
      />
    );
  }
  return (
    <EntryField<number | null>
      {...rest}
      kind={orNothing(figureKind(quantity, unit))}
      unit={figureUnit(quantity, unit)}
      value={typeof value === 'number' ? value : null}
      numeric
    />
  );
}
