#!/usr/bin/env node
import { commandLine } from "./command-line.js";

process.exitCode = await commandLine(process.argv.slice(2));
