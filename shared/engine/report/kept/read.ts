/** A kept document read again, whatever version wrote it. */
import { z } from 'zod'
import { present } from '../../plain/present.ts'
import { speakFrom } from '../../words/speak.ts'
import type { Block, LwDocument } from '../document.ts'
import { foreignBlocks, wordsLost } from './foreign.ts'
import { type KeptDocument, type Logo, logoRefSchema } from './form.ts'
import { frameSchema, readBlocks } from './parts.ts'
import { type DocumentStep, documentSteps } from './steps.table.ts'

/** Finds a logo by its digest; undefined where it is not in the records. */
export type LogoOf = (sha256: string) => Logo | undefined

/** `newer`: a newer version of the program wrote it. */
export type ReadDocument =
	| { state: 'read'; document: LwDocument; newer: boolean }
	| { state: 'unreadable'; newer: boolean }

const logoSchema: z.ZodType<Logo> = z.object({
	mediaType: z.enum(['image/png', 'image/jpeg', 'image/svg+xml']),
	base64: z.string(),
})

/**
 * The document as it is drawn. An older form is brought up step by step; of a newer one everything
 * that is known is read, and the words of the rest are shown as words. It never throws.
 * @param steps the steps up to this program's own version
 */
export function readDocument(
	{ version, content }: KeptDocument,
	logoOf: LogoOf,
	steps: readonly DocumentStep[] = documentSteps,
): ReadDocument {
	const newer = version > steps.length + 1
	const now = upgraded(version, content, steps)
	const frame = frameSchema.safeParse(now)
	if (!frame.success) return { state: 'unreadable', newer }
	const { letterhead, blocks, furniture, ...plain } = frame.data
	const { logo, isMissing } = readLogo(letterhead.logo, logoOf)
	const read = readBlocks(blocks)
	const around = wordsLost({ ...now, blocks: [] }, { ...frame.data, blocks: [] })
	const t = speakFrom()
	const saying: Block[] = [
		...(newer || read.foreign || around.length > 0 ? [small(t('kept.newer'))] : []),
		...(isMissing ? [small(t('kept.noLogo'))] : []),
	]
	return {
		state: 'read',
		newer,
		document: {
			...present(plain),
			...present({ furniture }),
			letterhead: present({ ...letterhead, logo }),
			blocks: [...saying, ...read.blocks, ...(around.length > 0 ? foreignBlocks(around) : [])],
		},
	}
}
const small = (text: string): Block => ({ kind: 'text', tone: 'small', text })

/** A step that meets what it does not expect leaves the document to be read as it is. */
function upgraded(
	version: number,
	content: KeptDocument['content'],
	steps: readonly DocumentStep[],
): KeptDocument['content'] {
	try {
		return steps.slice(version - 1).reduce((before, step) => step(before), content)
	} catch {
		return content
	}
}
/** A logo that stands in the document itself, as the first version wrote it, or one by digest. */
function readLogo(written: unknown, logoOf: LogoOf): { logo?: Logo; isMissing: boolean } {
	if (written === undefined) return { isMissing: false }
	const whole = logoSchema.safeParse(written).data
	const named = logoRefSchema.safeParse(written).data
	const logo = whole ?? (named && logoOf(named.sha256))
	return { ...(logo && { logo }), isMissing: logo === undefined }
}
