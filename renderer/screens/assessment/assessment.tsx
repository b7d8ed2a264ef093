/** The assessment: steps of fields read from the visit schema, findings with their basis beside them. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useEffect, useMemo, useRef, useState } from 'react'
import { assess } from '../../../shared/assess.ts'
import type { DraftContent } from '../../../shared/contract.ts'
import { termWords } from '../../../shared/visit/terms.ts'
import { anklesSchema, bodySchema, feetSchema, generalFlagShape, postureSchema, type Visit, visitSchema } from '../../../shared/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { fieldMeta, schemaAt } from '../../parts/fieldMeta.ts'
import { Trouble } from '../../parts/form.tsx'
import { parseNumber } from '../../parts/parseNumber.ts'

const pairs = (group: string, schema: { shape: { left: { unwrap(): { shape: object } } } }) => Object.keys(schema.shape.left.unwrap().shape).map((key) => [`${group}.left.${key}`, `${group}.right.${key}`])
const steps: Record<string, string[][]> = {
	'Player and play': ['code', 'position', 'kickingFoot', 'matchesPerWeek', 'trainingsPerWeek', 'organisedHoursPerWeek', 'freePlayHoursPerWeek'].map((key) => [`play.${key}`]),
	Feet: pairs('feet', feetSchema), Ankles: pairs('ankles', anklesSchema), Posture: pairs('posture', postureSchema),
	Growth: Object.keys(bodySchema.shape).map((key) => [`body.${key}`]), Flags: Object.keys(generalFlagShape).map((key) => [`screening.${key}`]),
}
const read = (from: unknown, path: string): unknown => path.split('.').reduce<unknown>((here, key) => (here as Record<string, unknown> | undefined)?.[key], from)
function write(visit: Visit, path: string, value: unknown): Visit {
	const copy = structuredClone(visit) as Record<string, unknown>
	const keys = path.split('.')
	let here = copy
	for (const key of keys.slice(0, -1)) here = (here[key] ??= {}) as Record<string, unknown>
	const last = keys.at(-1) ?? ''
	if (value === undefined) delete here[last]
	else here[last] = value
	return copy as Visit
}
function Entry({ path, draft, change }: { path: string; draft: DraftContent; change: (next: DraftContent) => void }) {
	const meta = fieldMeta(visitSchema, path)
	const side = /\.(left|right)\./.exec(path)?.[1]
	const label = side ? `${meta.title}, ${side}` : meta.title
	const value = read(draft.visit, path)
	const shown = draft.raw[path] ?? (Array.isArray(value) ? value.join(' ') : value === undefined ? '' : String(value))
	const [says, setSays] = useState('')
	const put = (text: string) => {
		const parsed = meta.kind === 'number' ? parseNumber(text, meta.unit) : undefined
		const next = text === '' ? undefined : parsed ? (parsed.ok ? (parsed.values.length === 1 ? parsed.values[0] : parsed.values) : Number.NaN) : meta.kind === 'yesNo' ? text === 'true' : text
		const right = (!parsed || parsed.ok) && schemaAt(visitSchema, path).safeParse(next).success
		const { [path]: _, ...raw } = draft.raw
		const soft = parsed?.ok && parsed.values.some((one) => one < (meta.softMin ?? one) || one > (meta.softMax ?? one))
		setSays(right ? (soft ? `${label}: unusual; expected ${meta.softMin} to ${meta.softMax} ${meta.unit}. Check it.` : '') : parsed && !parsed.ok ? parsed.says : `${label}: '${text}' is not allowed; give ${meta.min ?? ''} to ${meta.max ?? ''} ${meta.unit}.`)
		change({ ...draft, visit: write(draft.visit, path, right ? next : undefined), raw: right ? raw : { ...raw, [path]: text } })
	}
	const style = { minHeight: 44, width: '100%', font: 'inherit' }
	const options = meta.kind === 'yesNo' ? [['false', 'no'], ['true', 'yes']] : meta.options.map((one) => [one, termWords(one)])
	return <Box>{options.length ? <select aria-label={label} style={style} value={shown} onChange={(event) => put(event.target.value)}><option value="">{meta.kind === 'yesNo' ? 'not asked' : 'not recorded'}</option>{options.map(([one, words]) => <option key={one} value={one}>{words}</option>)}</select> : <input aria-label={label} style={style} value={shown} onChange={(event) => put(event.target.value)} />}<small role="status">{says}</small></Box>
}
export function AssessmentScreen({ playerId }: { playerId: string }) {
	const [draft, setDraft] = useState<DraftContent>()
	const [earlier, setEarlier] = useState<Visit[]>([])
	const [step, setStep] = useState('Player and play')
	const [saved, setSaved] = useState('')
	const [says, setSays] = useState('')
	const id = useRef('')
	useEffect(() => { call('drafts.open', { playerId, visitDate: new Date().toLocaleDateString('sv') }).then((got) => { id.current = got.draft.draftId; setDraft(got.draft.content); setEarlier(got.earlier); if (got.draft.content.step && got.draft.content.step in steps) setStep(got.draft.content.step) }, (error) => setSays(wordsOf(error))) }, [playerId])
	useEffect(() => {
		if (!draft) return
		const timer = setTimeout(() => { setSaved('Saving'); call('drafts.save', { draftId: id.current, content: { ...draft, step } }).then((got) => setSaved(`Saved ${new Date(got.savedAt).toLocaleTimeString('en-GB')}`), (error) => setSaved(`Not saved: ${wordsOf(error)} (your entries are still on this screen)`)) }, 400)
		return () => clearTimeout(timer)
	}, [draft, step])
	const result = useMemo(() => { try { return draft && assess(draft.visit, earlier) } catch (error) { return wordsOf(error) } }, [draft, earlier])
	if (!draft || !result) return <Trouble says={says} />
	const names = Object.keys(steps).filter((name) => name !== 'Growth' || typeof result === 'string' || result.ageYears < 18)
	return <Box sx={{ display: 'grid', gridTemplateColumns: '2fr 1fr', gap: 3 }}><Stack spacing={1}>
		<nav>{names.map((name) => <Button key={name} aria-current={name === step ? 'step' : undefined} onClick={() => setStep(name)}>{name}</Button>)}</nav><Typography variant="h1">{step}</Typography><p role="status">{saved}</p>
		{steps[step]?.map((paths) => { const meta = fieldMeta(visitSchema, paths[0] ?? ''); return <Box key={paths[0]} sx={{ display: 'grid', gridTemplateColumns: '2fr 1fr 1fr', gap: 1 }}><span>{meta.title} {meta.unit}</span>{paths.map((path) => <Entry key={path} path={path} draft={draft} change={setDraft} />)}</Box> })}
		<Button variant="contained" disabled={step === names.at(-1)} onClick={() => setStep(names[names.indexOf(step) + 1] ?? step)}>Next step</Button></Stack>
		<aside><p>Suggestions for the registered practitioner. Check the basis; decide yourself.</p>{typeof result === 'string' ? <Trouble says={result} /> : result.findings.map((one) => <Box key={one.id}><b>{one.level}</b>: {one.says}<details><summary>Basis</summary>{one.because.map((why) => `${why.measure} ${why.value} ${why.unit ?? ''}`).join('; ')}. {one.basis.rule}. {one.basis.threshold} {one.basis.source} ({one.basis.strength})</details></Box>)}</aside></Box>
}
