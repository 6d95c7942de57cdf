@NullMarked
package baymist.film;

import org.jspecify.annotations.NullMarked;
