@NullMarked
package baymist.cavity;

import org.jspecify.annotations.NullMarked;
