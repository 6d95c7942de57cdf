@NullMarked
package baymist.access;

import org.jspecify.annotations.NullMarked;
