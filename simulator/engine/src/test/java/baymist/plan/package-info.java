@NullMarked
package baymist.plan;

import org.jspecify.annotations.NullMarked;
