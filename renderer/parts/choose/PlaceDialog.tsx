/** The folders of the host as a dialog: down and up, a new folder, and the one that is used. */
import {
	Box,
	Button,
	Dialog,
	DialogActions,
	DialogContent,
	DialogTitle,
	Link,
	Typography,
} from '@mui/material'
import { useId, useState } from 'react'
import type { PlaceEntry } from '../../../shared/desk/places/calls.ts'
import { type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import { Disclosure } from '../Disclosure.tsx'
import { Trouble } from '../form.tsx'
import { NewFolder } from './NewFolder.tsx'
import { PlaceList } from './PlaceList.tsx'
import { stateWords, takeWords } from './placeWords.ts'
import { type Places, usePlaces } from './usePlaces.ts'
import { WrittenPath } from './WrittenPath.tsx'

const step = {
	minHeight: 44,
	display: 'inline-flex',
	alignItems: 'center',
	fontWeight: 600,
} as const
/** Where the list stands: each folder above leads back to it. */
function Crumbs({ places: { look, open } }: { places: Places }) {
	return (
		<Box
			component="nav"
			aria-label="Where this is"
			sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}
		>
			{look?.at && (
				<Link component="button" type="button" sx={step} onClick={() => open('')}>
					Places
				</Link>
			)}
			{look?.at &&
				look.above.map(({ name, path }) => (
					<Box key={path} sx={{ display: 'inline-flex', alignItems: 'center', gap: 1 }}>
						<span aria-hidden>›</span>
						<Link component="button" type="button" sx={step} onClick={() => open(path)}>
							<bdi>{name}</bdi>
						</Link>
					</Box>
				))}
			{look?.at && <span aria-hidden>›</span>}
			<Typography
				component="span"
				aria-current="location"
				sx={{ ...step, overflowWrap: 'anywhere', fontWeight: 400 }}
			>
				<bdi>{look?.at?.name ?? 'Places'}</bdi>
			</Typography>
		</Box>
	)
}
const keyWords = 'Arrow keys and Enter open a folder, Backspace goes up, letters lead to a name.'
/** What else can be done where the list stands. */
function Further({
	purpose,
	places,
	naming,
	setNaming,
}: {
	purpose: Purpose
	places: Places
	naming: boolean
	setNaming: (naming: boolean) => void
}) {
	const { look, up, again, busy } = places
	const mayMake = purposes[purpose].picks === 'folder' && look?.at?.canWrite === true
	return (
		<>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				<Button variant="outlined" size="small" disabled={!look?.at || busy} onClick={up}>
					Up
				</Button>
				<Button variant="outlined" size="small" disabled={busy} onClick={again}>
					Look again
				</Button>
				{mayMake && !naming && (
					<Button variant="outlined" size="small" onClick={() => setNaming(true)}>
						New folder
					</Button>
				)}
			</Box>
			{mayMake && naming && <NewFolder places={places} done={() => setNaming(false)} />}
			<Disclosure label="Write the path instead">
				<WrittenPath purpose={purpose} places={places} />
			</Disclosure>
		</>
	)
}
/** @param chosen told the path that was chosen; @param close the dialog ends without one */
export function PlaceDialog({
	purpose,
	chosen,
	close,
}: {
	purpose: Purpose
	chosen: (path: string) => void
	close: () => void
}) {
	const places = usePlaces(purpose, chosen)
	const [naming, setNaming] = useState(false)
	const [titleId, stateId] = [useId(), useId()]
	const { look, says, ready, busy, choose, open } = places
	const enter = ({ is, path }: PlaceEntry) => (is === 'file' ? choose(path) : open(path))
	return (
		<Dialog
			open
			onClose={close}
			fullWidth
			maxWidth="sm"
			transitionDuration={0}
			aria-labelledby={titleId}
			aria-describedby={stateId}
			// the form behind the dialog would hear it too
			onSubmit={(event) => event.stopPropagation()}
		>
			<DialogTitle id={titleId}>{purposes[purpose].title}</DialogTitle>
			<DialogContent sx={{ display: 'grid', gap: 1, gridTemplateColumns: 'minmax(0, 1fr)' }}>
				<Crumbs places={places} />
				{look?.says && <Typography role="status">{look.says}</Typography>}
				<Trouble says={says} />
				<PlaceList
					purpose={purpose}
					places={places}
					label={look?.at ? `In ${look.at.name}` : 'Places'}
					enter={enter}
				/>
				<Typography id={stateId} role="status" sx={{ overflowWrap: 'anywhere' }}>
					{look ? stateWords(purpose, look) : 'Looking.'}
				</Typography>
				<Typography variant="body2" color="textSecondary">
					{keyWords}
				</Typography>
				<Further purpose={purpose} places={places} naming={naming} setNaming={setNaming} />
			</DialogContent>
			<DialogActions sx={{ flexWrap: 'wrap', gap: 1 }}>
				<Button onClick={close}>Cancel</Button>
				<Button
					variant="contained"
					disabled={busy || ready === undefined}
					onClick={() => ready !== undefined && choose(ready)}
				>
					{takeWords(purpose)}
				</Button>
			</DialogActions>
		</Dialog>
	)
}
