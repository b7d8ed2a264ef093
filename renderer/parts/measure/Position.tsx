/**
 * The position of play: typed freely, with the list of the code played to choose from. What the
 * list understands by the words is told; the words stay as they were typed.
 */
import { Autocomplete, TextField } from '@mui/material'
import { useContext, useEffect, useState } from 'react'
import { positionsIn, positionsOf } from '../../../shared/engine/visit/positions.ts'
import { withRaw, withValue } from '../draft-path.ts'
import { judge } from '../judge.ts'
import { PasteBlock } from '../PasteDialog.tsx'
import { isBlock } from '../pasteBlock.ts'
import { type FieldProps, nameOf, storedText } from './fieldState.ts'

type Code = Parameters<typeof positionsIn>[0]
/** What is told under the field: what was understood, where it is not just what was typed. */
function understood(typed: string, code: Code | undefined): string {
	if (typed.trim() === '') return ' '
	const names = positionsOf(typed, code).map(({ name }) => name)
	if (names.length > 0)
		return names.join().toLowerCase() === typed.trim().toLowerCase()
			? ' '
			: `Read as ${names.join(', ')}`
	return code === undefined
		? 'Choose the code, so that the position can be read.'
		: 'Not on the list of this code: kept as typed, no advice rests on it.'
}
export function Position(field: FieldProps) {
	const { path, draft, change } = field
	const takeBlock = useContext(PasteBlock)
	const code = draft.visit.play?.code
	const stored = storedText(field)
	// a space at the end is the beginning of the next word: it stays while it is typed
	const [text, setText] = useState(stored)
	const typed = text.trim() === stored.trim() ? text : stored
	const judged = judge(path, typed)
	// The list forgets its marked option at the first drawing after its options changed. That one
	// comes at once: at the next answer of the host it would take the mark from under an arrow key.
	const [, drawAgain] = useState(typed)
	useEffect(() => drawAgain(typed), [typed])
	const set = (text: string) => {
		setText(text)
		const { error, value } = judge(path, text)
		change((now) => (error === undefined ? withValue(now, path, value) : withRaw(now, path, text)))
	}
	return (
		<Autocomplete
			freeSolo
			fullWidth
			disableClearable
			size="small"
			options={code === undefined ? [] : positionsIn(code).map(({ name }) => name)}
			// the words of the list are found by their synonyms too
			filterOptions={(names, { inputValue }) => {
				const meant = positionsOf(inputValue, code).map(({ name }) => name)
				const like = inputValue.trim().toLowerCase()
				return names.filter((name) => meant.includes(name) || name.toLowerCase().includes(like))
			}}
			inputValue={typed}
			slotProps={{ paper: { variant: 'outlined', elevation: 0 } }}
			onInputChange={(_event, text, reason) => {
				if (reason !== 'reset') set(text)
			}}
			onChange={(_event, chosen) => set(chosen)}
			renderInput={(params) => (
				<TextField
					{...params}
					error={judged.error !== undefined}
					helperText={judged.error ?? understood(typed, code)}
					onPaste={(event) => {
						const block = event.clipboardData.getData('text/plain')
						if (isBlock(block) && takeBlock(path, block)) event.preventDefault()
					}}
					slotProps={{
						...params.slotProps,
						htmlInput: {
							...params.slotProps?.htmlInput,
							'aria-label': nameOf(path),
							'data-path': path,
						},
						formHelperText: { role: judged.error === undefined ? 'status' : 'alert' },
					}}
				/>
			)}
		/>
	)
}
