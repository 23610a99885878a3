// The list of topics that `explain` knows: a new one is its own file and one line here.
import { columnTopic } from "./column.ts";
import { findingTopic } from "./finding.ts";
import { keywordTopic } from "./keyword.ts";
import type { Topic } from "./topic.ts";
import { unitTopic } from "./unit.ts";

export const TOPICS: readonly Topic[] = [findingTopic, keywordTopic, columnTopic, unitTopic];
