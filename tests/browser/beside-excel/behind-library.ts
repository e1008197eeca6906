import { FakeExcelError, type FakeWorkbook } from "../../host/fake-excel";
import { Context } from "../../host/fake-excel/batch";
import type { ClientObject } from "../../host/fake-excel/client-object";

/**
 * Excel as its own library sees it through the bridge: batches of actions on objects that are named by the
 * path to them, carried out on a workbook in memory.
 */
interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly number[];
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

/** The number of a call, whether it went well, and its cells or the message of its error. */
export type FunctionResult = readonly [number, boolean, unknown, ...unknown[]];

export interface Batch {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

const ROOT = 1;
const NEW_OBJECT = 2;
const METHOD = 3;
const PROPERTY = 4;
const INDEXER = 5;
const REFERENCE = 6;

const INSTANTIATE = 1;
const QUERY = 2;
const CALL = 3;
const SET = 4;
const TRACE = 5;

type Members = Record<string, unknown> & ((...given: unknown[]) => unknown);

const upperFirst = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);
const lowerFirst = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);

export class BehindLibrary {
  /** Every action that a library asked for, as Class.member. */
  readonly asked: string[] = [];
  private readonly context: Context;
  private readonly references = new Map<string, unknown>();

  constructor(
    fake: FakeWorkbook,
    private readonly functionsAnswered: (results: readonly FunctionResult[]) => void,
  ) {
    this.context = new Context(fake);
  }

  async answer({ Actions, ObjectPaths }: Batch): Promise<object> {
    const objects = new Map<number, unknown>();
    const find = (id: number): unknown => {
      if (!objects.has(id)) objects.set(id, this.resolve(ObjectPaths[id] as ObjectPath, find));
      return objects.get(id);
    };
    try {
      const readers: (() => object)[] = [];
      for (const action of Actions) readers.push(this.act(action, ObjectPaths, find));
      await this.context.sync();
      return { Results: readers.map((read) => read()) };
    } catch (problem) {
      if (!(problem instanceof FakeExcelError)) throw problem;
      return { Results: [], Error: { Code: problem.code, Message: problem.message } };
    }
  }

  private resolve(path: ObjectPath, find: (id: number) => unknown): unknown {
    if (path.ObjectPathType === ROOT) return this.context.workbook;
    // The one object that is made anew takes the results of functions.
    if (path.ObjectPathType === NEW_OBJECT)
      return { setInvocationArrayResults: this.functionsAnswered };
    if (path.ObjectPathType === REFERENCE) return this.references.get(path.Name);
    const parent = find(path.ParentObjectPathId as number) as Members;
    const name = lowerFirst(path.Name);
    if (path.ObjectPathType === PROPERTY) {
      if (name === "application") return this.context.application;
      return parent[name];
    }
    const member = { [INDEXER]: "getItem", [METHOD]: name }[path.ObjectPathType];
    if (member === undefined || parent[member] === undefined)
      throw new Error(`not known behind the library: ${JSON.stringify(path)}`);
    return Reflect.apply(parent[member] as Members, parent, argumentsOf(path.ArgumentInfo, find));
  }

  private act(
    action: Action,
    paths: Batch["ObjectPaths"],
    find: (id: number) => unknown,
  ): () => object {
    const { Id: ActionId, ActionType, Name, ArgumentInfo, QueryInfo } = action;
    if (ActionType === TRACE) return () => ({ ActionId, Value: null });
    const object = find(action.ObjectPathId) as Members;
    this.asked.push(`${paths[action.ObjectPathId]?.Name ?? ""}.${Name}`);
    const given = argumentsOf(ArgumentInfo, find);
    if (ActionType === QUERY) return this.query(ActionId, object, QueryInfo?.Select ?? []);
    if (ActionType === SET) object[lowerFirst(Name)] = given[0];
    // References are kept for as long as the page: letting one go changes nothing.
    if (ActionType === CALL && !Name.startsWith("_"))
      Reflect.apply(object[lowerFirst(Name)] as Members, object, given);
    return () => ({ ActionId, Value: ActionType === INSTANTIATE ? this.named(object) : null });
  }

  private query(ActionId: number, object: Members, select: readonly string[]): () => object {
    const client = object as unknown as ClientObject & { items?: readonly ClientObject[] };
    const isCollection = "items" in client;
    client.load(select.map((name) => (isCollection ? `items/${name}` : name)).join(","));
    const values = (one: object) =>
      Object.fromEntries(select.map((name) => [upperFirst(name), (one as Members)[name]]));
    return () => {
      if (client.isNullObject) return { ActionId, Value: null };
      const Value = isCollection
        ? { _Items: client.items?.map((item) => ({ ...this.named(item), ...values(item) })) }
        : { ...this.named(client), ...values(client) };
      return { ActionId, Value };
    };
  }

  /** What the library calls the object by from now on. */
  private named(object: unknown): object | null {
    if ((object as ClientObject | undefined)?.isNullObject === true) return null;
    const name = `r${this.references.size + 1}`;
    this.references.set(name, object);
    return { _ReferenceId: name };
  }
}

function argumentsOf(
  { Arguments = [], ReferencedObjectPathIds = [] }: ArgumentInfo = {},
  find: (id: number) => unknown,
) {
  return Arguments.map((given, i) => {
    const reference = ReferencedObjectPathIds[i];
    // What was left out travels as null.
    return reference === undefined || reference === 0 ? (given ?? undefined) : find(reference);
  });
}
