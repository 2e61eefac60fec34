#!/usr/bin/env bash
# Writes every generated file anew, once: scenarios/KEYS.md and the JSON Schemas, src/docs/answers.md, questions.md and accuracy.md, the golden outputs of wrong files
# and wrong commands. Read the difference before you commit it. Run: tests/generate.sh; ends with 0 if all were made.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
dotnet build -c Release -v q
export PUSHSIM_REWRITE=1
made() {
    project=$1
    shift
    "tests/$project/bin/Release/net10.0/$project" $(printf -- '-class %s ' "$@")
}
made PushSim.Scenarios.Tests PushSim.Scenarios.Tests.KeyTableTests PushSim.Scenarios.Tests.SchemaTests
made PushSim.Cli.Tests PushSim.Cli.Tests.Check.WrongFileGoldenTests PushSim.Cli.Tests.WrongCommandGoldenTests PushSim.Cli.Tests.Words.AnswerCatalogueTests PushSim.Cli.Tests.Questions.QuestionPageTests
made PushSim.Tests PushSim.Tests.Accuracy.AccuracyTests
dotnet build -c Release -v q
git --no-pager diff --stat -- scenarios src/docs src/PushSim.Scenarios/Schemas tests
