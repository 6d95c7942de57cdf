/** Tests of the exports: laws, readers that are not ours, and a browser. */
@NullMarked
package baymist.export;

import org.jspecify.annotations.NullMarked;
