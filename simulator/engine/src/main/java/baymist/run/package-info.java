@NullMarked
package baymist.run;

import org.jspecify.annotations.NullMarked;
