/** A number with its repeats, or text: typed, judged at once, compared with the last visit. */
import { Box, TextField, Typography } from '@mui/material'
import { type CSSProperties, type ReactNode, useContext, useEffect, useRef, useState } from 'react'
import type { FieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { withNotMeasured, withRaw, withValue } from '../draft-path.ts'
import { numberNote, textNote } from '../fieldNote.ts'
import { type Judged, judge } from '../judge.ts'
import { PasteBlock } from '../PasteDialog.tsx'
import { isBlock } from '../pasteBlock.ts'
import { unitShown } from '../units.ts'
import {
	copyOther,
	type FieldProps,
	nameOf,
	otherOf,
	sameAsOther,
	storedText,
} from './fieldState.ts'
import { lastVisitWords, meanWords } from './readingWords.ts'
import { undone } from './undone.ts'
import { WhichWay } from './WhichWay.tsx'
import { WhyNot } from './WhyNot.tsx'

/** The text under the hand, before it is a value; undefined where the draft's own stands. */
function useTyped(): [string | undefined, (text: string | undefined) => void] {
	const [typed, setTyped] = useState<string>()
	useEffect(() => {
		const back = () => setTyped(undefined)
		addEventListener(undone, back)
		return () => removeEventListener(undone, back)
	}, [])
	return [typed, setTyped]
}
/** Keeps what was typed as a value, as a reason, or as raw text until it can be read. */
function keep({ path, change }: FieldProps, text: string): void {
	const { notMeasured, error, value } = judge(path, text)
	change((now) => {
		if (notMeasured !== undefined) return withNotMeasured(now, path, notMeasured)
		return error === undefined ? withValue(now, path, value) : withRaw(now, path, text)
	})
}
/** What is told of the value, in one line. */
function helpLine(says: string, last: string): ReactNode {
	if (!says || !last) return says || last || undefined
	return (
		<>
			{says}
			<Box component="span" sx={{ color: 'text.secondary' }}>
				{`; ${last}`}
			</Box>
		</>
	)
}
/** A value is read from where the foot is held; a reason needs no such size. */
const numberStyle = (isReason: boolean): CSSProperties => ({
	...(isReason ? { fontSize: '1rem' } : { fontSize: '1.4rem', fontWeight: 600 }),
	lineHeight: 1.2,
	textAlign: 'right',
	fontVariantNumeric: 'tabular-nums',
})
const Unit = ({ unit }: { unit: string }) => (
	<Typography
		variant="body2"
		color="text.secondary"
		sx={{ pl: 1, pb: 2, whiteSpace: 'nowrap' }}
		data-unit=""
	>
		{unitShown(unit)}
	</Typography>
)
/** What stands round the text of a field, by its kind and by what was found wrong. */
function slotsOf(path: string, meta: FieldMeta, { error, warning }: Judged, isReason: boolean) {
	const number = meta.kind === 'number'
	return {
		htmlInput: {
			'aria-label': nameOf(path),
			'data-path': path,
			'aria-keyshortcuts': otherOf(path) ? sameAsOther : undefined,
			inputMode: number ? ('decimal' as const) : ('text' as const),
			autoComplete: 'off',
			maxLength: meta.maxLength,
			style: number ? numberStyle(isReason) : {},
		},
		input: number ? { endAdornment: <Unit unit={meta.unit} /> } : {},
		formHelperText: {
			role: error || warning ? 'alert' : undefined,
			sx: warning && !error ? { color: 'warning.main' } : {},
		},
	}
}
export function Reading({ meta, ...field }: FieldProps & { meta: FieldMeta }) {
	const { path, draft, change, before } = field
	const [typed, setTyped] = useTyped()
	const box = useRef<HTMLDivElement>(null)
	const takeBlock = useContext(PasteBlock)
	const text = typed ?? storedText(field)
	const judged = judge(path, text)
	const reason = meta.kind === 'number' ? draft.visit.notMeasured?.[path] : undefined
	// what is asked stands with its buttons
	const trouble = judged.ways ? '' : (judged.error ?? judged.warning)
	const says = trouble ?? meanWords(path, meta, draft.visit)
	return (
		<Box ref={box} sx={meta.kind === 'number' ? numberNote : textNote}>
			<TextField
				fullWidth
				size="small"
				multiline={meta.note}
				value={text}
				error={Boolean(judged.error)}
				helperText={helpLine(says, lastVisitWords(path, meta, draft.visit, before))}
				onChange={(event) => {
					setTyped(event.target.value)
					keep(field, event.target.value)
				}}
				onBlur={() => setTyped(undefined)}
				onKeyDown={copyOther(field, () => setTyped(undefined))}
				onPaste={(event) => {
					const block = event.clipboardData.getData('text/plain')
					if (isBlock(block) && takeBlock(path, block)) event.preventDefault()
				}}
				slotProps={slotsOf(path, meta, judged, reason !== undefined)}
			/>
			{judged.ways && (
				<WhichWay
					name={nameOf(path)}
					says={judged.error}
					ways={judged.ways}
					choose={(clear) => {
						setTyped(undefined)
						keep(field, clear)
						box.current?.querySelector('input')?.focus()
					}}
				/>
			)}
			{reason === undefined ? null : (
				<WhyNot
					name={nameOf(path)}
					reason={reason}
					set={(words) => {
						setTyped(undefined)
						change((now) => withNotMeasured(now, path, words))
					}}
				/>
			)}
		</Box>
	)
}
