module setbook

go 1.26
