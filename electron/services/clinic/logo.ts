/** The logo of the letterhead, proved drawable before it is kept. */
import type { BadLogo } from '../../../shared/engine/report/bad-logo.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { drawableLogo, proveLogo } from '../../pdf/logo.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

type Logo = NonNullable<Clinic['logo']>

/** A page with the logo and little else. */
const pageWith = (logo: Logo): LwDocument => ({
	title: 'Logo',
	kind: 'sample',
	language: 'en',
	draft: true,
	letterhead: { clinicName: 'Letterhead', address: [], colour: '#1f5f5b', logo },
	subject: [],
	blocks: [],
	notes: [],
	footer: '',
	createdAt: '2000-01-01T00:00:00.000Z',
})
const isBadLogo = (error: unknown): error is BadLogo =>
	error instanceof Error && error.name === 'BadLogo'

/**
 * Proves a logo that is not the one kept already: unpacked to its last pixel, and drawn once by what
 * draws the pages.
 * @param path where the logo stands in the input
 * @throws Refusal naming what is wrong with it and what is allowed
 */
export async function needDrawable(
	{ renderPdf }: Pick<Deps, 'renderPdf'>,
	logo: Logo | undefined,
	held: Logo | undefined,
	path: string,
): Promise<void> {
	if (!logo) return
	if (held && held.base64 === logo.base64 && held.mediaType === logo.mediaType) return
	try {
		proveLogo(logo)
		await renderPdf(pageWith(logo), { logoMustShow: true })
	} catch (error) {
		if (!isBadLogo(error)) throw error
		throw new Refusal('clinic.logo', 'The logo cannot be used. Nothing was changed.', [
			{ path, message: error.flaw },
		])
	}
}
/** What a person is told of a kept logo that the pages go without; undefined where it is drawn. */
export function logoTrouble(logo: Logo | undefined): string | undefined {
	if (!logo) return undefined
	try {
		drawableLogo(logo)
		return undefined
	} catch (error) {
		if (!isBadLogo(error)) throw error
		return (
			`The logo of the letterhead cannot be drawn (${error.flaw}). Pages are drawn without ` +
			'it: open Settings, Letterhead, and choose another file or remove the logo.'
		)
	}
}
