// The list of files to start from: a new one is its own file and one line here.
import { benchSkeleton } from "./bench.ts";
import { engineSkeleton } from "./engine.ts";
import { headSkeleton } from "./head.ts";
import { sessionSkeleton } from "./session.ts";
import type { Skeleton } from "./skeleton.ts";

export const SKELETONS: readonly Skeleton[] = [sessionSkeleton, benchSkeleton, headSkeleton, engineSkeleton];
