@NullMarked
package baymist.scene;

import org.jspecify.annotations.NullMarked;
