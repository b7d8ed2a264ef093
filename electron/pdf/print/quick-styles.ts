/**
 * Styles looked up once for each place. For each word pdfmake asks for some twenty properties, each
 * through the whole stack of the nodes round it: a quarter of the time of a page. What stands on the
 * stack is the same for all words of a text, so an answer holds until something is put on or taken
 * off. The answers are those that pdfmake gives: the bytes of every document are held by its digest.
 */
import styleContextStack from 'pdfmake/js/StyleContextStack.js'

const Stack = styleContextStack.default
type Stack = InstanceType<typeof Stack>
type Item = Readonly<Record<string, unknown>>

const isValue = (value: unknown): boolean => value !== undefined && value !== null
const answers = new WeakMap<Stack, Map<string, unknown>>()
const { push, pop, getProperty } = Stack.prototype
const slowly = Stack.getStyleProperty

/** What the stack answers, as it stands now. */
function answerOf(stack: Stack, property: string): unknown {
	let known = answers.get(stack)
	if (!known) {
		known = new Map()
		answers.set(stack, known)
	}
	if (known.has(property)) return known.get(property)
	const value = getProperty.call(stack, property)
	known.set(property, value)
	return value
}
/** From now on in this thread; a second call changes nothing. */
export function lookUpQuickly(): void {
	Stack.prototype.push = function (item) {
		answers.delete(this)
		push.call(this, item)
	}
	Stack.prototype.pop = function (howMany) {
		answers.delete(this)
		pop.call(this, howMany)
	}
	Stack.getStyleProperty = (item: Item, stack, property, otherwise) => {
		const own = item[property]
		if (isValue(own)) return own
		if (!stack) return otherwise
		// a named style of its own comes before the stack
		if (item.style !== undefined) return slowly(item, stack, property, otherwise)
		const value = answerOf(stack, property)
		return isValue(value) ? value : otherwise
	}
}
