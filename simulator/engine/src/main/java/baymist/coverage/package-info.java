@NullMarked
package baymist.coverage;

import org.jspecify.annotations.NullMarked;
