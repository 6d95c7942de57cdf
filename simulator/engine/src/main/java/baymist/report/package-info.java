@NullMarked
package baymist.report;

import org.jspecify.annotations.NullMarked;
