# Sourced by the benches here: builds the classes and leaves where they are in $CLASSPATH.
cd "$(dirname "${BASH_SOURCE[0]}")/../../.."
mvn -q -B -Pdraft -pl client -am test-compile \
  org.apache.maven.plugins:maven-dependency-plugin:3.8.1:build-classpath \
  -Dmdep.outputFile="$PWD/client/target/bench.path" >&2
export CLASSPATH="client/target/test-classes:client/target/classes:$(cat client/target/bench.path)"
