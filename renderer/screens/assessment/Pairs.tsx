/** The pairs that the player owns, and how many may be bought. */
import { Box, Button, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import { DenseField } from '../../parts/DenseField.tsx'
import { withoutRow } from './listRows.ts'
import { PairRow } from './PairRow.tsx'
import type { DraftProps, StepProps } from './stepProps.ts'

/** A pair more, under the first id that is free: p1, p2 and so on. */
function withPair(now: StepProps['draft']): StepProps['draft'] {
	const pairs = now.visit.footwear ?? []
	const taken = new Set(pairs.map((pair) => pair.id))
	let number = 1
	while (taken.has(`p${number}`)) number++
	return { ...now, visit: { ...now.visit, footwear: [...pairs, { id: `p${number}` }] } }
}
/** @param assessment what is said of each pair; left out where nothing is worked out */
export function Pairs({
	draft,
	change,
	assessment,
}: DraftProps & Partial<Pick<StepProps, 'assessment'>>) {
	const list = draft.visit.footwear ?? []
	const box = useRef<HTMLDivElement>(null)
	const adding = useRef<HTMLButtonElement>(null)
	const [added, setAdded] = useState(false)
	const [removed, setRemoved] = useState('')
	// a pair that was added begins with its name
	useEffect(() => {
		if (!added) return
		setAdded(false)
		const name = `[data-path="footwear.${list.length - 1}.name"]`
		box.current?.querySelector<HTMLElement>(name)?.focus()
	}, [added, list.length])
	const remove = (index: number) => {
		const taken = list[index]
		change((now) => withoutRow(now, 'footwear', index))
		setRemoved(taken?.name ?? 'The pair')
		// where a second press of the key takes nothing away
		adding.current?.focus()
	}
	return (
		<Box ref={box} sx={{ display: 'grid', gap: 1.5 }}>
			{list.map(({ id }, index) => (
				<PairRow
					key={id}
					index={index}
					{...{ draft, change, assessment }}
					remove={() => remove(index)}
				/>
			))}
			<Typography role="status" variant="body2" sx={{ '&:empty': { display: 'none' } }}>
				{removed && `${removed} is taken out. Ctrl+Z brings it back.`}
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: 2 }}>
				<Button
					ref={adding}
					variant="outlined"
					aria-keyshortcuts="Alt+A"
					onClick={() => {
						setRemoved('')
						change(withPair)
						setAdded(true)
					}}
				>
					Add a pair
				</Button>
				<Typography variant="body2" color="text.secondary" aria-hidden sx={{ alignSelf: 'center' }}>
					Alt+A
				</Typography>
				<Box sx={{ flex: '1 1 12rem', maxWidth: '20rem' }}>
					<DenseField
						path="means"
						hint="Nothing chosen: as many as are needed"
						draft={draft}
						change={change}
					/>
				</Box>
			</Box>
		</Box>
	)
}
