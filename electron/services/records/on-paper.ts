/** Names that stand on pages, held where they are entered: no page fails for one when it is drawn. */
import { paperNameProblems } from '../../../shared/engine/visit/names.ts'
import { Refusal } from './refusal.ts'

/**
 * @param names by the path of their field
 * @throws Refusal naming each that holds a sign or letters that no page can print
 */
export function needPrintable(names: Readonly<Record<string, string | undefined>>): void {
	const problems = paperNameProblems(names)
	if (problems.length > 0)
		throw new Refusal(
			'records.cannot-be-printed',
			'Something here cannot be printed, and stands on pages. Nothing was changed.',
			problems,
		)
}
