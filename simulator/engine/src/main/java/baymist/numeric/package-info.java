@NullMarked
package baymist.numeric;

import org.jspecify.annotations.NullMarked;
