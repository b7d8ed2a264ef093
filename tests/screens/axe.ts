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
 * What stands half under the head or foot that stay in sight is no smaller for it: it is looked at
 * again in the middle of the window, alone.
 */
async function isSmall(page: Page, selector: string): Promise<boolean> {
	const control = page.locator(selector).first()
	await control.evaluate((element) => element.scrollIntoView({ block: 'center' }))
	const { violations } = await new AxeBuilder({ page })
		.setLegacyMode()
		.include(selector)
		.withRules(['target-size'])
		.analyze()
	return violations.length > 0
}
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
	const found: string[] = []
	for (const { id, help, nodes } of violations)
		for (const { target, failureSummary } of nodes) {
			if (id === 'target-size' && !(await isSmall(page, target.map(String).join(' ')))) continue
			const why = (failureSummary ?? '').split('\n')[1]?.trim() ?? help
			found.push(`${where}: ${id}: ${target.join(' ')}: ${why}`)
		}
	return found
}
