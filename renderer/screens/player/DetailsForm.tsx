/** The fields of a player and of the guardian, and what of them is not saved yet. */
import { Alert, Box, Button, Stack } from '@mui/material'
import { Fragment, type KeyboardEvent } from 'react'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { sexes } from '../../../shared/engine/visit/terms.ts'
import { languageNames } from '../../../shared/engine/words/en/languages.ts'
import { clinicProtocol, loadProtocol } from '../../parts/clinicProtocol.ts'
import { timeInWords, today } from '../../parts/dates.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { keepsItself } from '../../parts/typedHere.ts'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { useReading } from '../../query.ts'
import { guardianPaths, isLanguage, personPaths, titleOf, twicePaths } from './details.ts'
import type { PlayerForm } from './usePlayerForm.ts'

const types: Record<string, string> = {
	birthDate: 'date',
	email: 'email',
	phone: 'tel',
	'guardian.email': 'email',
	'guardian.phone': 'tel',
}
const needed = ['givenName', 'familyName', 'birthDate', 'sex']
const isMinor = (birthDate = ''): boolean =>
	/^\d{4}-\d\d-\d\d$/.test(birthDate) && !isAdultOn(birthDate, today(), clinicProtocol)
function guardianHint(birthDate: string | undefined): string {
	const under = `under ${clinicProtocol.value('player.adultFromYears')}`
	return isMinor(birthDate)
		? `This player is ${under}: name the parent or guardian who comes along or consents.`
		: `Needed for a player ${under}; else leave it empty.`
}
/** Said where the first field is: the button stands below what is in sight. */
const keysOfForm = 'Enter: next field; Ctrl+Enter: save.'
/** Enter goes on to the next field, as everywhere; only Ctrl+Enter or the button saves. */
function walkOrSave(event: KeyboardEvent<HTMLElement>, save: () => void): void {
	if (event.key === 'Enter' && event.ctrlKey) {
		event.preventDefault()
		save()
	} else if (walkByEnter(event))
		// past the last field it rests where the next Enter saves, and saves nothing by itself
		event.currentTarget.querySelector<HTMLElement>('button[type=submit]')?.focus()
}
interface DetailsFormProps {
	typed: PlayerForm
	isNew: boolean
	/** the first field takes the focus: the form was opened by hand */
	takesFocus: boolean
	/** when what is not saved was last typed, where it was not just now; ISO moment */
	since: string | undefined
	save: () => void
	/** closes the form; what was typed stays */
	close?: () => void
}
export function DetailsForm({ typed, isNew, takesFocus, since, save, close }: DetailsFormProps) {
	useReading('protocol in force', {}, ['protocol.get'], loadProtocol)
	const field = (path: string) => (
		<Fragment key={path}>
			<Field
				label={titleOf(path)}
				value={typed.form[path] ?? ''}
				type={types[path]}
				optional={!needed.includes(path)}
				error={typed.wrong[path]}
				hint={typed.asked[path]}
				options={path === 'sex' ? sexes : undefined}
				offers={isLanguage(path) ? languageNames : undefined}
				focus={takesFocus && path === 'givenName'}
				set={(value) => typed.put(path, value)}
			/>
			{twicePaths.includes(path) && typed.typed[path]?.trim() && (
				<Box onPaste={(event) => event.preventDefault()}>
					<Field
						label={`${titleOf(path)} once more`}
						value={typed.again[path] ?? ''}
						type="email"
						hint="Typed, not pasted: what is written here is where documents go."
						set={(value) => typed.putAgain(path, value)}
					/>
				</Box>
			)}
		</Fragment>
	)
	return (
		<Stack
			{...keepsItself}
			component="form"
			noValidate
			aria-label={isNew ? 'Details of a new player' : 'Details of the player'}
			spacing={2}
			onKeyDown={(event) => walkOrSave(event, save)}
			onSubmit={(event) => {
				event.preventDefault()
				save()
			}}
		>
			<Unsaved typed={typed} isNew={isNew} since={since} />
			<Sheet title="Details">{personPaths(typed.form).map(field)}</Sheet>
			<Sheet title="Guardian" hint={guardianHint(typed.form.birthDate)}>
				{guardianPaths(typed.form).map(field)}
			</Sheet>
			<Trouble says={typed.says} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
				<Button type="submit" variant="contained" size="large" disabled={typed.busy}>
					Save player
				</Button>
				{close && (
					<Button variant="outlined" size="large" onClick={close}>
						Close details
					</Button>
				)}
			</Box>
		</Stack>
	)
}
/** What was typed and is not saved: it is kept, and can be discarded. */
function Unsaved({ typed, isNew, since }: Pick<DetailsFormProps, 'typed' | 'isNew' | 'since'>) {
	const { edited, bringBack, discard, notKept } = typed
	if (notKept)
		return (
			<Alert severity="error" role="alert">
				What you type is on this screen only and not kept: {notKept}
			</Alert>
		)
	if (bringBack)
		return (
			<Alert
				severity="info"
				role="status"
				action={
					<Button color="inherit" onClick={bringBack}>
						Bring it back
					</Button>
				}
			>
				Discarded. The details are as they were saved last.
			</Alert>
		)
	// one line from the first key on: nothing below moves while somebody types
	if (!edited)
		return (
			<Alert severity="info" role="note">
				{isNew
					? `What is typed here is kept for you until you save or discard it. ${keysOfForm}`
					: 'All is saved as it stands here. What is typed is kept until you save or discard it.'}
			</Alert>
		)
	const names = Object.keys(typed.typed).map((path) => titleOf(path))
	return (
		<Alert
			severity="warning"
			role="status"
			action={
				<Button color="inherit" onClick={discard} sx={{ whiteSpace: 'nowrap' }}>
					Discard what was typed
				</Button>
			}
		>
			Not saved yet{since ? `, typed ${timeInWords(since)}` : ''}: {names.join(', ')}. It is kept
			for you until you save or discard it. {keysOfForm}
		</Alert>
	)
}
