"""Parts of Which grit next?"""
