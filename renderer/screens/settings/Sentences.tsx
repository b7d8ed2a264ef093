/** The clinic's own wording of single sentences, in place of the shipped one. */
import { Box, Button, Collapse, Stack, TextField } from '@mui/material'
import { useState } from 'react'
import { documentSentences, textProblems } from '../../../shared/engine/words/speak.ts'
import { Field } from '../../parts/form.tsx'

type Texts = Readonly<Record<string, string>>
/** As many as are listed at a time. */
const mostShown = 30
const leastLetters = 2

/** Sentences that hold the letters; while nothing is looked for, those that have own words. */
const found = (own: Texts, find: string) => {
	const letters = find.trim().toLowerCase()
	return Object.entries(documentSentences)
		.filter(([key, shipped]) =>
			letters.length < leastLetters
				? key in own
				: `${key} ${shipped} ${own[key] ?? ''}`.toLowerCase().includes(letters),
		)
		.slice(0, mostShown)
}
/** @param text the own words; undefined where the shipped ones stand */
function Sentence({
	id,
	shipped,
	text,
	set,
}: {
	id: string
	shipped: string
	text: string | undefined
	set: (text: string | undefined) => void
}) {
	const isOwn = text !== undefined
	const [problem] = isOwn ? textProblems({ [id]: text }) : []
	return (
		<Box>
			<TextField
				fullWidth
				multiline
				label={id}
				value={text ?? shipped}
				error={problem !== undefined}
				helperText={problem ?? (isOwn ? `Shipped: ${shipped}` : '')}
				onChange={(event) => set(event.target.value)}
				slotProps={{ inputLabel: { shrink: true } }}
			/>
			{isOwn ? (
				<Button size="small" onClick={() => set(undefined)}>
					Restore the shipped sentence
				</Button>
			) : null}
		</Box>
	)
}
export function Sentences({ own, set }: { own: Texts; set: (texts: Texts) => void }) {
	const [open, setOpen] = useState(false)
	const [find, setFind] = useState('')
	const put = (key: string, text: string | undefined) => {
		const { [key]: _, ...rest } = own
		// own words keep their place while they are changed
		set(text === undefined ? rest : { ...own, [key]: text })
	}
	return (
		<Box component="section" sx={{ borderTop: 1, borderColor: 'divider', pt: 0.5 }}>
			<Button aria-expanded={open} onClick={() => setOpen(!open)} sx={{ px: 0 }}>
				Your own sentences ({Object.keys(own).length} set)
			</Button>
			<Collapse in={open} unmountOnExit>
				<Stack spacing={2} sx={{ mt: 1 }}>
					<Field
						label="Find a sentence"
						value={find}
						set={setFind}
						optional
						hint="Two letters or more. Words in braces are filled in and must stay."
					/>
					{found(own, find).map(([key, shipped]) => (
						<Sentence
							key={key}
							id={key}
							shipped={shipped}
							text={own[key]}
							set={(text) => put(key, text)}
						/>
					))}
				</Stack>
			</Collapse>
		</Box>
	)
}
