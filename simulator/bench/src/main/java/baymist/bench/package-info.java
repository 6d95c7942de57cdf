/**
 * Benchmarks, built only with the profile {@code bench}: {@code mvn -Pbench package -DskipTests}, then {@code java -jar
 * simulator/bench/target/benchmarks.jar} for the JMH ones, {@code java -cp simulator/bench/target/benchmarks.jar
 * baymist.bench.ReachRate SCENE} (or {@code FlexibleReachBenchmark}, {@code PeakMemory}) for the others. Compare numbers only within one machine and one run.
 */
@NullMarked
package baymist.bench;

import org.jspecify.annotations.NullMarked;
