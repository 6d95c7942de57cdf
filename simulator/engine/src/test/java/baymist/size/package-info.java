@NullMarked
package baymist.size;

import org.jspecify.annotations.NullMarked;
