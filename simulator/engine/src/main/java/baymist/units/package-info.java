@NullMarked
package baymist.units;

import org.jspecify.annotations.NullMarked;
