@NullMarked
package baymist.spray;

import org.jspecify.annotations.NullMarked;
