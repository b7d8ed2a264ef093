/** What axe has to report about a page. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { still } from './drive.ts'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
/** What a look can change; the rest is the same in every look and is looked at once, in light. */
const ofLooks = [
	'color-contrast',
	'link-in-text-block',
	'target-size',
	'scrollable-region-focusable',
]
/**
 * One line for each thing axe has to report. Legacy mode: the frames of this program hold only its
 * own PDF pages, so no other page is opened for them. @param within looks at this part alone
 */
export async function axe(
	page: Page,
	where: string,
	all = true,
	within?: string,
): Promise<string[]> {
	// a colour on its way is no colour of the page
	await still(page)
	const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] })
	if (within !== undefined) builder.include(within)
	const { violations } = await (all
		? builder.withTags(rules)
		: builder.withRules(ofLooks)
	).analyze()
	return violations.flatMap(({ id, help, nodes }) =>
		nodes.map(
			(node) =>
				`${where}: ${id}: ${node.target.join(' ')}: ` +
				`${(node.failureSummary ?? '').split('\n')[1]?.trim() ?? help}`,
		),
	)
}
