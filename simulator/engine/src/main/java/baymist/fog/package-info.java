@NullMarked
package baymist.fog;

import org.jspecify.annotations.NullMarked;
