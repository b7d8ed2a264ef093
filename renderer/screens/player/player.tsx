/** One player: details, earlier visits with their reports, and the way into an assessment. */
import { Button, Stack, TextField, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { sexes } from '../../../shared/visit/terms.ts'
import { playerSchema } from '../../../shared/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { fieldMeta } from '../../parts/fieldMeta.ts'
import { Field, Trouble } from '../../parts/form.tsx'

const paths = ['givenName', 'familyName', 'birthDate', 'club', 'email', 'phone'] as const
export function PlayerScreen({ playerId }: { playerId?: string }) {
	const [form, setForm] = useState<Record<string, unknown>>({})
	const [opened, setOpened] = useState<OutputOf<'players.open'>>()
	const [says, setSays] = useState('')
	useEffect(() => { if (playerId) call('players.open', { playerId }).then((value) => { setOpened(value); setForm(value.player) }, (error) => setSays(wordsOf(error))) }, [playerId])
	const save = async () => {
		const player = playerSchema.safeParse(Object.fromEntries(Object.entries(form).filter(([, value]) => value !== '')))
		if (!player.success) return setSays(player.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}.`).join(' '))
		try { const saved = await call('players.save', { playerId, player: player.data }); setSays(saved.similar.length ? `Saved. Similar players exist: ${saved.similar.map((one) => `${one.givenName} ${one.familyName}, born ${one.birthDate}`).join('; ')}.` : ''); location.hash = `#/player/${saved.playerId}` } catch (error) { setSays(wordsOf(error)) }
	}
	const report = async (visitId: string) => {
		try { const pdf = await call('reports.open', { visitId }); const link = document.createElement('a'); link.href = URL.createObjectURL(new Blob([Uint8Array.from(atob(pdf.base64), (one) => one.charCodeAt(0))], { type: 'application/pdf' })); link.download = pdf.fileName; link.click() } catch (error) { setSays(wordsOf(error)) }
	}
	return <Stack spacing={1} sx={{ maxWidth: 640 }}><Typography variant="h1">Player</Typography>
		{paths.map((path) => <Field key={path} label={fieldMeta(playerSchema, path).title} type={path === 'birthDate' ? 'date' : 'text'} value={String(form[path] ?? '')} set={(value) => setForm({ ...form, [path]: value })} />)}
		<TextField select label="Sex" value={form.sex ?? ''} onChange={(event) => setForm({ ...form, sex: event.target.value })} slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}><option value="">choose</option>{sexes.map((sex) => <option key={sex}>{sex}</option>)}</TextField>
		<Trouble says={says} /><Button variant="contained" onClick={() => void save()}>Save player</Button>
		{opened && <Button variant="contained" onClick={() => { location.hash = `#/assessment/${playerId}` }}>{opened.drafts.length ? 'Resume assessment' : 'Start assessment'}</Button>}
		{opened?.visits.map((visit) => <Button key={visit.visitId} onClick={() => void report(visit.visitId)}>Report of {visit.visitDate}</Button>)}
	</Stack>
}
