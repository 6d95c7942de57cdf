/** Tests of seams. */
@NullMarked
package baymist.seam;

import org.jspecify.annotations.NullMarked;
