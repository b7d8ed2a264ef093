/**
 * Finds code that decides by a sentence: a pattern, a comparison or a cut on what is said to a
 * person. Behaviour goes by codes; a sentence may be worded anew without anything else changing.
 */
import ts from 'typescript'

/** Names of properties that always hold a sentence. */
const sentences = new Set(['says', 'message'])
/** Names that hold words only in these types, or in values called after them. */
const wordsOf: Readonly<Record<string, readonly string[]>> = {
	title: ['working', 'lwdocument'],
	about: ['decision', 'line', 'kept'],
	source: ['basis'],
	rule: ['basis'],
	measure: ['because'],
}
/** Methods that read a text. */
const reading = new Set([
	...['startsWith', 'endsWith', 'includes', 'indexOf', 'search', 'match', 'matchAll'],
	...['replace', 'replaceAll', 'split'],
])
/** Methods that ask whether a text is one of several, or fits a pattern. */
const asking = new Set(['test', 'exec', 'includes', 'indexOf', 'has'])
const comparing = new Set([
	ts.SyntaxKind.EqualsEqualsEqualsToken,
	ts.SyntaxKind.ExclamationEqualsEqualsToken,
	ts.SyntaxKind.EqualsEqualsToken,
	ts.SyntaxKind.ExclamationEqualsToken,
])
/** Folders whose functions make words. */
const wordMakers = /\/words\/[\w./-]+$|\/visit\/terms\.ts$|\/plain\/days\.ts$|\/parts\/dates\.ts$/
/** Functions of those files that give no words. */
const noWords = new Set(['state', 'contentOf', 'privateTopicOf', 'isDay', 'addDays', 'dayNumber'])

interface ProseRead {
	/** from 1 */
	line: number
	code: string
}
/** Names in a file that hold words: what was taken out of an object, or kept under another name. */
interface Known {
	names: Set<string>
	makers: Set<string>
}
const isNamedAfter = (kinds: readonly string[], text: string): boolean =>
	kinds.some((kind) => text.toLowerCase().endsWith(kind))
/** Whether a property of this name, of a value or type of that name, holds words. */
const holdsWords = (property: string, owner: string): boolean =>
	sentences.has(property) ||
	(Object.hasOwn(wordsOf, property) && isNamedAfter(wordsOf[property] ?? [], owner))

/** The value that an expression stands for, without brackets, `!`, `?? ''` and `as`. */
function bare(node: ts.Expression): ts.Expression {
	if (ts.isParenthesizedExpression(node) || ts.isNonNullExpression(node))
		return bare(node.expression)
	if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) return bare(node.expression)
	if (
		ts.isBinaryExpression(node) &&
		[ts.SyntaxKind.QuestionQuestionToken, ts.SyntaxKind.BarBarToken].includes(
			node.operatorToken.kind,
		)
	)
		return bare(node.left)
	return node
}
const toSame = new Set(['toLowerCase', 'toUpperCase', 'trim', 'toString', 'join'])
/** The last name of a value: `basis` of `finding.basis`. */
const lastName = (node: ts.Expression): string =>
	ts.isPropertyAccessExpression(node) ? node.name.text : node.getText()
function isProse(expression: ts.Expression, known: Known): boolean {
	const node = bare(expression)
	if (ts.isIdentifier(node)) return known.names.has(node.text)
	if (ts.isPropertyAccessExpression(node))
		return holdsWords(node.name.text, lastName(bare(node.expression)))
	if (!ts.isCallExpression(node)) return false
	const called = bare(node.expression)
	if (ts.isIdentifier(called)) return known.makers.has(called.text)
	return (
		ts.isPropertyAccessExpression(called) &&
		toSame.has(called.name.text) &&
		isProse(called.expression, known)
	)
}
/** Presence is no reading: nothing, or an empty text. */
const isNothing = (node: ts.Expression): boolean =>
	node.kind === ts.SyntaxKind.NullKeyword ||
	node.getText() === 'undefined' ||
	(ts.isStringLiteral(node) && node.text === '')
function readsByCall(node: ts.CallExpression, known: Known): boolean {
	const called = bare(node.expression)
	if (!ts.isPropertyAccessExpression(called)) return false
	const method = called.name.text
	if (reading.has(method) && isProse(called.expression, known)) return true
	return asking.has(method) && node.arguments.some((given) => isProse(given, known))
}
function readsByComparison(node: ts.BinaryExpression, known: Known): boolean {
	if (!comparing.has(node.operatorToken.kind)) return false
	if (isNothing(node.left) || isNothing(node.right)) return false
	return isProse(node.left, known) || isProse(node.right, known)
}
function reads(node: ts.Node, known: Known): boolean {
	if (ts.isCallExpression(node)) return readsByCall(node, known)
	if (ts.isBinaryExpression(node)) return readsByComparison(node, known)
	return ts.isSwitchStatement(node) && isProse(node.expression, known)
}
/** The name of what a pattern takes apart: its property, its type, or the value it is set to. */
function ownerOf(pattern: ts.BindingPattern): string {
	const { parent } = pattern
	if (ts.isBindingElement(parent)) return (parent.propertyName ?? parent.name).getText()
	if (parent.type) return parent.type.getText().replace(/^readonly /, '')
	return ts.isVariableDeclaration(parent) && parent.initializer
		? lastName(bare(parent.initializer))
		: ''
}
/** The functions that a file takes from those that make words. */
function makersOf(node: ts.ImportDeclaration): string[] {
	const { moduleSpecifier: from, importClause } = node
	const named = importClause?.namedBindings
	if (!ts.isStringLiteral(from) || !wordMakers.test(from.text)) return []
	return named && ts.isNamedImports(named)
		? named.elements
				.filter(({ name, propertyName }) => !noWords.has((propertyName ?? name).text))
				.map(({ name }) => name.text)
				.filter((name) => /^[a-z]/.test(name))
		: []
}
/** The name that holds words from here on; undefined where none does. */
function wordsNamed(node: ts.Node, known: Known): string | undefined {
	if (ts.isBindingElement(node) && ts.isObjectBindingPattern(node.parent)) {
		const property = (node.propertyName ?? node.name).getText()
		return holdsWords(property, ownerOf(node.parent)) ? node.name.getText() : undefined
	}
	if (!ts.isVariableDeclaration(node) || !node.initializer) return undefined
	return isProse(node.initializer, known) ? node.name.getText() : undefined
}
function learn(node: ts.Node, known: Known): void {
	if (ts.isImportDeclaration(node)) for (const maker of makersOf(node)) known.makers.add(maker)
	const name = wordsNamed(node, known)
	if (name !== undefined) known.names.add(name)
}
const matching = new Set(['toMatch', 'toContain', 'toBe', 'toEqual', 'toStrictEqual'])
/** What `expect` was given, where a node is an assertion on it: `expect(x).not.toMatch(...)`. */
function expected(node: ts.CallExpression): ts.Expression | undefined {
	const called = bare(node.expression)
	if (!ts.isPropertyAccessExpression(called) || !matching.has(called.name.text)) return undefined
	let owner = bare(called.expression)
	if (ts.isPropertyAccessExpression(owner) && owner.name.text === 'not')
		owner = bare(owner.expression)
	return ts.isCallExpression(owner) && owner.expression.getText() === 'expect'
		? owner.arguments[0]
		: undefined
}
/** Whether a test holds a sentence against words of its own. */
function asserts(node: ts.Node, known: Known): boolean {
	if (!ts.isCallExpression(node)) return false
	const given = expected(node)
	const [wanted] = node.arguments
	if (!given || !wanted || isNothing(wanted) || !isProse(given, known)) return false
	const isText =
		ts.isRegularExpressionLiteral(wanted) ||
		ts.isStringLiteralLike(wanted) ||
		ts.isTemplateExpression(wanted)
	return isText && holdsEnglish(wanted.getText())
}
/** That a sentence has no gap and an end is asked of any wording. */
const holdsEnglish = (text: string): boolean =>
	/\p{L}{2}/u.test(text.replace(/undefined|NaN|null|object/g, ''))
/** Every place of a file for which `is` holds, in order, with the names that hold words there. */
function placesIn(
	name: string,
	text: string,
	is: (node: ts.Node, known: Known) => boolean,
): ProseRead[] {
	const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true)
	const known: Known = { names: new Set(), makers: new Set() }
	const every = (node: ts.Node, visit: (node: ts.Node) => void): void => {
		visit(node)
		ts.forEachChild(node, (child) => every(child, visit))
	}
	every(file, (node) => learn(node, known))
	const found: ProseRead[] = []
	every(file, (node) => {
		if (!is(node, known)) return
		const { line } = file.getLineAndCharacterOfPosition(node.getStart())
		found.push({ line: line + 1, code: node.getText().replace(/\s+/g, ' ') })
	})
	return found
}
/**
 * Every place of a file that decides by a sentence, in order. @param name of the file: .tsx is read
 * as such
 */
export const proseReads = (name: string, text: string): ProseRead[] => placesIn(name, text, reads)
/** Every place of a test that holds a sentence against words of its own, in order. */
export const proseAssertions = (name: string, text: string): ProseRead[] =>
	placesIn(name, text, asserts)
