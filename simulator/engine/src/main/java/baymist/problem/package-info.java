@NullMarked
package baymist.problem;

import org.jspecify.annotations.NullMarked;
