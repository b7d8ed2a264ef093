/**
 * What the host answered, as the screens hold it: asked when a page opens, asked again when a
 * change makes it old (changes.table.ts) or a person wishes it, and never by itself, since reading
 * a record is written into the audit trail. Nothing outlives the page that shows it.
 */
import {
	keepPreviousData,
	MutationCache,
	notifyManager,
	QueryCache,
	QueryClient,
	useMutation,
	useQuery,
} from '@tanstack/react-query'
import type { CallName, InputOf, OutputOf } from '../shared/contract.ts'
import { makesOld } from './changes.table.ts'
import { call, wordsOf } from './host.ts'

declare module '@tanstack/react-query' {
	interface Register {
		queryMeta: {
			/** the calls whose answers it is made of */
			calls: readonly CallName[]
		}
	}
}
// a button that works is off before the next press can reach it
notifyManager.setScheduler(queueMicrotask)

const statusKey = ['session.status', {}] as const
/** No network stands between: none is waited for, and nothing is retried by itself. */
const asked = {
	networkMode: 'always',
	retry: false,
	gcTime: 0,
} as const
export const hostClient = new QueryClient({
	queryCache: new QueryCache({
		onError: (_, { queryKey }) => {
			if (queryKey[0] !== statusKey[0]) askStatusAgain()
		},
	}),
	mutationCache: new MutationCache({ onError: () => askStatusAgain() }),
	defaultOptions: {
		queries: {
			...asked,
			staleTime: Number.POSITIVE_INFINITY,
			refetchOnWindowFocus: false,
			refetchOnReconnect: false,
		},
		mutations: asked,
	},
})
/**
 * A refusal may mean that the records were locked meanwhile: the gate looks. Only while they are
 * open, since in the set-up the recovery key must stay on the screen.
 */
export function askStatusAgain(): void {
	if (hostClient.getQueryData<OutputOf<'session.status'>>(statusKey)?.state === 'open')
		void hostClient.invalidateQueries({ queryKey: statusKey })
}
/**
 * Another person works here, or nobody: what was answered to the one before is forgotten, and what
 * still stands on the page is asked anew.
 */
export function forgetAnswers(): void {
	const answers = {
		predicate: ({ queryKey }: { queryKey: readonly unknown[] }) => queryKey[0] !== statusKey[0],
	}
	hostClient.removeQueries({ ...answers, type: 'inactive' })
	void hostClient.resetQueries(answers)
	hostClient.getMutationCache().clear()
}

/** An answer as a screen shows it; parts/Answered.tsx draws its states. */
export interface HostAnswer<T> {
	/** undefined until the first answer */
	value: T | undefined
	/** why the last asking failed, in words; a value beside it is that of before */
	says: string
	asking: boolean
	/** the value answers the input before this one, see `keepLast` */
	ofLastInput: boolean
	/** asks the host again */
	again: () => void
}
interface Asking<T> {
	/** false: not asked yet; by default it is asked at once */
	when?: boolean
	/** keeps the answer to the last input on the page until the one to this input comes */
	keepLast?: boolean
	/** asks again after so long, for what goes on in the host by itself; undefined: no more */
	againAfterMs?: (value: T | undefined) => number | undefined
}
/**
 * What a page is made of, read by several calls.
 * @param name names the reading among all others
 * @param calls those whose answers `read` puts together: a change that makes one of them old has it
 * read again
 */
export function useReading<I, T>(
	name: string,
	input: I,
	calls: readonly CallName[],
	read: (input: I) => Promise<T>,
	{ when = true, keepLast = false, againAfterMs }: Asking<T> = {},
): HostAnswer<T> {
	const { data, error, isFetching, isPlaceholderData, refetch } = useQuery({
		queryKey: [name, input],
		queryFn: () => read(input),
		meta: { calls },
		enabled: when,
		refetchInterval: ({ state }) => againAfterMs?.(state.data) ?? false,
		// a window behind another is locked like any other
		refetchIntervalInBackground: true,
		...(keepLast ? { placeholderData: keepPreviousData } : {}),
	})
	return {
		value: data,
		says: error ? wordsOf(error) : '',
		asking: isFetching,
		ofLastInput: isPlaceholderData,
		again: () => void refetch(),
	}
}
/** The answer of one call of the contract. */
export const useHost = <N extends CallName>(
	name: N,
	input: InputOf<N>,
	asking?: Asking<OutputOf<N>>,
): HostAnswer<OutputOf<N>> => useReading(name, input, [name], (given) => call(name, given), asking)

/**
 * Makes a call that changes something, and has asked again what it makes old (changes.table.ts).
 * @throws HostRefusal like `call`
 */
export async function change<N extends CallName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
	const answer = await call(name, input)
	const old: readonly CallName[] = makesOld[name] ?? []
	void hostClient.invalidateQueries({
		predicate: ({ meta }) => meta?.calls.some((read) => old.includes(read)) ?? false,
	})
	return answer
}

/** What a person set going on a page: whether it runs, and how it ended, in words. */
export interface HostAction {
	busy: boolean
	/** why it failed */
	says: string
	/** what was done */
	done: string
	/** @param work returns what was done in words, '' where the page shows it by itself */
	run: (work: () => Promise<string>) => void
	/** takes the words away, as something was typed since */
	forget: () => void
}
export function useHostAction(): HostAction {
	const { isPending, error, data, mutate, reset } = useMutation({
		mutationFn: (work: () => Promise<string>) => work(),
	})
	const says = error ? wordsOf(error) : ''
	return { busy: isPending, says, done: data ?? '', run: mutate, forget: reset }
}
