import type { FieldProblem } from '../../use-cases/outcome.js';

/**
 * Problems in the words of a page. Use cases name fixes in pounds and SI; money and torque are asked for here in other
 * units, and a page never shows a fact's path.
 */
export function pageProblems(problems: readonly FieldProblem[]): readonly FieldProblem[] {
  return problems.map(({ field, message }) => {
    if (field.endsWith('Cents')) return { field, message: 'Enter the amount in dollars as a number, like 8,995.00.' };
    if (field.endsWith('nutTorqueNm')) {
      return { field, message: 'Enter the wheel nut torque in lb-ft as a number, like 120, or leave it empty.' };
    }
    return { field, message };
  });
}
