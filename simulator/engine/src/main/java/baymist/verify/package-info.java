@NullMarked
package baymist.verify;

import org.jspecify.annotations.NullMarked;
