/**
 * Benchmarks, built only with the profile {@code bench}: {@code mvn -Pbench package -DskipTests}, then {@code java -jar
 * simulator/bench/target/benchmarks.jar ratios} (or {@code demos}, {@code profile}, {@code memory}, {@code scale}; anything else goes to JMH), see {@link baymist.bench.Bench}
 * and docs/benchmarks/README.md. Single figures: {@code java -cp simulator/bench/target/benchmarks.jar baymist.bench.ReachRate SCENE} (or {@code FlexibleReachBenchmark}, {@code RayRate},
 * {@code AirRate}). Compare numbers only within one machine and one run.
 */
@NullMarked
package baymist.bench;

import org.jspecify.annotations.NullMarked;
