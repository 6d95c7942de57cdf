@NullMarked
package baymist.geom;

import org.jspecify.annotations.NullMarked;
