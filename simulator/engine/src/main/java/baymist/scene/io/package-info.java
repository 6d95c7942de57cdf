/**
 * Reads scene and model files, and publishes their format.
 *
 * <p>Front classes: {@link baymist.scene.io.SceneReader} (file in, {@link baymist.scene.Scene} out, or every problem at once) and
 * {@link baymist.scene.io.SceneSchema} (JSON Schema for editors).
 *
 * <p>How a scene is read:
 *
 * <ol>
 *   <li>{@code SourceFiles} opens a file within limits of size and takes it into the hash.
 *   <li>{@code YamlTree} turns bytes into nodes with lines: strict UTF-8, one document, bounded depth and number of nodes after
 *       aliases are followed, no recursion, no key twice. {@code GuardedParser} stops hostile files while they are parsed.
 *   <li>{@code Decoder} and {@code ScalarDecoder} walk nodes and {@code Shape}s side by side. What does not fit becomes a finding
 *       and a {@code Value.Broken}; reading goes on, also into the files named.
 *   <li>The assemblers ({@code SceneAssembler} first) make the records and check what values must satisfy together. Broken values are
 *       NaN or empty there: comparisons with them are false, so that one fault is told once.
 * </ol>
 *
 * <p>The format is described once, as shapes, in {@code SceneFormat}, {@code CavityFormat} and {@code ModelFormat}: decoder, schema
 * and the tables of docs/formats come from that description. To add a field, add a line there, use it in an assembler, and
 * run {@code FormatDocTest} with {@code -Dbaymist.docs=write}.
 *
 * <p>Assumptions: shares that miss 1 by up to 1.5 % are rounding (ASSUMED: two printed digits of up to three shares) and are scaled;
 * the product's density is the same at all temperatures.
 *
 * <p>Limits: openings of ribs that end short, and parts of meshes, get their names when the geometry is built; whether an entry's
 * opening exists is checked there. The section of a wing box bounds its holes by the greatest depth alone.
 *
 * <p>Sources: YAML 1.2.2; JSON Schema draft 2020-12; FIPS 180-4 (SHA-256); Damerau (1964) (misspelt keys).
 */
@NullMarked
package baymist.scene.io;

import org.jspecify.annotations.NullMarked;
