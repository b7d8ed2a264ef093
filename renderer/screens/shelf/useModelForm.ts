/** What is typed of a model, what it means, and saving it. */
import { useMemo, useRef, useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { Model } from '../../../shared/engine/visit/shelf.ts'
import type { ModelTexts } from './modelTexts.ts'
import { readModel } from './readModel.ts'
import { unsaved } from './unsaved.ts'
import type { ShelfPageProps } from './useShelf.ts'

export interface ModelFormProps extends ShelfPageProps {
	/** the page, under which entries not saved are kept */
	place: string
	start: ModelTexts
}
/** Errors and questions that are shown, by path. */
export interface Shown {
	errors: Record<string, string>
	questions: Record<string, string>
}

export function useModelForm({ place, start, shelf, save }: ModelFormProps) {
	const [texts, setTexts] = useState<ModelTexts>(() => unsaved.get(place) ?? start)
	const [tried, setTried] = useState(false)
	const [touched, setTouched] = useState<ReadonlySet<string>>(new Set())
	const [busy, setBusy] = useState(false)
	const form = useRef<HTMLDivElement>(null)
	const read = useMemo(() => readModel(texts, shelf), [texts, shelf])
	const isNew = texts.id === undefined
	const put = (patch: Partial<ModelTexts>) => {
		const next = { ...texts, ...patch }
		setTexts(next)
		unsaved.set(place, next)
	}
	const setField = (name: string, text: string) => {
		setTouched(new Set([...touched, name]))
		put({ fields: { ...texts.fields, [name]: text } })
	}
	/** An empty field is not blamed before the model is to be saved. */
	const blamed = Object.entries(read.errors).filter(
		([path]) => tried || !read.empty.has(path) || touched.has(path),
	)
	const shown: Shown = { errors: Object.fromEntries(blamed), questions: read.questions }
	const leave = () => {
		unsaved.delete(place)
		navigate('/shelf')
	}
	const saveModel = async (model: Model) => {
		const models = isNew
			? [...shelf.models, model]
			: shelf.models.map((other) => (other.id === model.id ? model : other))
		setBusy(true)
		try {
			await save({ ...shelf, models }, `${model.name} is saved.`)
			leave()
		} catch {
			/* the words stand above the form */
		} finally {
			setBusy(false)
		}
	}
	const keep = () => {
		setTried(true)
		if (read.model) void saveModel(read.model)
		else
			requestAnimationFrame(() =>
				form.current?.querySelector<HTMLElement>('[aria-invalid=true]')?.focus(),
			)
	}
	return { form, texts, isNew, read, shown, tried, busy, put, setField, keep, leave }
}
/** The form as its parts are given it. */
export type ModelFormState = ReturnType<typeof useModelForm>
